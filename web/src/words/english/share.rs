//! The link and its code, in English.

use crate::words::share::ShareWords;

pub(super) const SHARE: ShareWords = ShareWords {
    share: "Share",
    link: "Link and code",
    heading: "The check as a link",
    intro: "The link holds the whole check. Opened on another device it shows the same there. Nothing is sent to any \
            server: what stands behind the # stays in the browser.",
    holds: "It holds: {load}; truck: {truck}; all figures with how they are known, and the list of what was looked at.",
    left_out: "These entries cannot be read as they stand and are left out: {list}.",
    no_photo: "A traced photo is not in it, only its outline.",
    address: "Where the page is on the other device",
    address_help: "Change it where the other device finds the page at another address.",
    address_file: "This page was opened as a file. On another device this link finds nothing, unless the page's address \
                   there is put here; or hand on the check as a file.",
    the_link: "The link",
    copy: "Copy the link",
    copied: "Copied.",
    selected: "Selected. Copy it now: hold it, or Ctrl + C.",
    code: "QR code of the link",
    code_help: "Hold the other device's camera before it.",
    too_long: "This check is too long for a link ({n} characters; up to {most} get through mail and messengers). Save it \
               to a file and hand that on.",
    no_code: "The link is too long for a code that a camera reads from a screen. Hand on the link, or the file.",
    save: "Save to a file",
    found: "The link holds a check: {what}. To show it here replaces what is entered. Undo brings that back.",
    found_list: "{load}, with {truck}",
    found_yes: "Show the link's check",
    found_no: "Keep what is here",
    opened: "Opened from the link: {what}. Undo brings back what was there.",
    refused: "The link was not opened and nothing was changed: {why}",
    damaged: "it is cut short or letters of it are wrong. Have it sent again, or the check as a file.",
    large: "it holds more than any check can.",
    newer: "it was made by a newer Standfast.",
};
