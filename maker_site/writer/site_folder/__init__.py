"""Files put into place in an output folder: all of them or none, and never over what the maker put there.

    with SiteFolder.open(out) as site:
        site.put("workshop/index.html", page)
        if not site.keep("photos/harbour-3f9a.webp"):
            site.put_file("photos/harbour-3f9a.webp", save_photo)
        changes = site.commit()

`OUT/.maker-site/` holds what is needed beside the site: `lock`, `manifest.json` (what was made, with size
and hash), `made-here.txt`, and while a make runs `staging/` and `journal.json`. A commit writes the journal,
removes what is no longer wanted, moves the staged files into place and puts the new manifest in. Killed
before the journal is whole, the last site is as it was; killed later, the next opening finishes the work
from the journal.

Whose is a file at an address that is to be written?

| the folder | the file | what is done |
| --- | --- | --- |
| any | has the very bytes to be written | taken as made; left untouched |
| has a manifest | named in it | the tool's: replaced |
| has a manifest | not named in it | the maker's: the make is refused and the file named |
| has lost its manifest, and still has `made-here.txt` | any | the tool's: replaced |
| has neither (all of `.maker-site` was deleted, or never was) | any | the maker's: refused and named |
| any | a link or a folder, or below a link | the maker's: refused and named |

So deleting the manifest costs time only. A file that the tool made and lost track of in that way is not
removed when it is no longer wanted; `Changes.unknown` names all such, so that the maker can be told. A file
made by the tool and then changed by hand is the tool's; where the change keeps the size it is seen only once
the manifest is deleted.
"""

from maker_site.writer.site_folder._changes import Changes
from maker_site.writer.site_folder._content_folder import check_out
from maker_site.writer.site_folder._problem import SiteFolderProblem
from maker_site.writer.site_folder._site_folder import Portion, SiteFolder

__all__ = ["Changes", "Portion", "SiteFolder", "SiteFolderProblem", "check_out"]
