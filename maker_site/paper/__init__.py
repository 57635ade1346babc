"""Paper: PDF at true size of transfers, press cards and the menu, typeset from frozen data.

    Typesetter(templates, fonts)        sets a document by a theme's template; the records' text is data, never source
    transfer_sheets(...)                where every transfer lies, on how few sheets
    set_transfers, set_cards, set_menu  the documents themselves

Knows nothing of the web: what a card or a menu says comes in as words.
"""
