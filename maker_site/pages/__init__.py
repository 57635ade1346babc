"""Pages: for each page of each copy its address and a frozen view of exactly what it shows."""
