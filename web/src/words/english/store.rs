//! Keeping the book in the browser, in English.

use crate::words::Count;
use crate::words::store::StoreWords;

pub(super) const STORE: StoreWords = StoreWords {
    this_tab: "{name} (this tab, {time})",
    both_kept: "\u{201c}{name}\u{201d} was changed in another tab at the same time. Both are kept: what you did here is \
                \u{201c}{ours}\u{201d}.",
    joined: "\u{201c}{name}\u{201d} was changed in another tab at the same time. Both changes are in it now.",
    not_removed: "\u{201c}{name}\u{201d} was changed in another tab meanwhile, so it was not removed.",
    put_back: "\u{201c}{name}\u{201d} was removed in another tab meanwhile. As you changed it here, it is kept.",
    changed: "\u{201c}{name}\u{201d} is changed.",
    archived: "\u{201c}{name}\u{201d} is put away.",
    taken_out: "\u{201c}{name}\u{201d} is back in the list.",
    removed: "\u{201c}{name}\u{201d} is removed.",
    imported: Count { one: "1 entry is taken in from the file.", many: "{n} entries are taken in from the file." },
    undo: "Undo",
    close: "Close",
    full: "The browser has no room left for this page.",
    failed: "The browser did not keep it: {why}",
    unkept: Count {
        one: "1 entry is only in this tab: save to a file before closing it.",
        many: "{n} entries are only in this tab: save to a file before closing it.",
    },
    again: "Try again",
    save_book: "Save the book to a file",
    nowhere: "This browser keeps nothing for this page: what is in the book is lost when the tab is closed. Save to a file.",
    starting: "Looking for what this browser keeps \u{2026}",
    kept_here: "Kept in this browser, on this device.",
    kept_plain: "Kept in this browser\u{2019}s plain storage, which is small: save to a file now and then.",
    promised: "The browser has promised not to clear it by itself.",
    not_promised: "The browser may clear it when room is short: save to a file now and then.",
    promise_unknown: "The browser does not say how long: save to a file now and then.",
    damaged: Count {
        one: "1 entry could not be read. It is left where it is, not deleted:",
        many: "{n} entries could not be read. They are left where they are, not deleted:",
    },
    damaged_one: "{name}: {why}",
    save_damaged: "Save what could not be read",
    drafts: "What was entered in another tab is kept as well:",
    draft_unnamed: "A check without a name",
    draft_show: "Show it here",
    draft_forget: "Forget it",
    draft_later: "Later",
};
