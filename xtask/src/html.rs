//! A small reader of HTML start tags, enough for the page's own `index.html` and for what trunk makes of it.
//!
//! It finds start tags with their attributes and places, skips comments, and treats the text of scripts and styles as
//! one piece, as a browser does. It is no general parser: the places it gives are cut and replaced in the text, so
//! that everything else stays as it was written.

use std::ops::Range;

/// A start tag.
#[derive(Debug, PartialEq, Eq)]
pub struct Tag {
    /// Its name in lower case.
    pub name: String,
    attributes: Vec<(String, String)>,
    /// Where the tag stands. For a script or style: from its start tag to its end tag.
    pub place: Range<usize>,
    /// The text between start and end tag of a script or style; empty for others.
    pub text: Range<usize>,
}

impl Tag {
    /// The value of an attribute, `""` for one without a value, `None` if it is not there.
    pub fn get(&self, name: &str) -> Option<&str> {
        self.attributes.iter().find(|(key, _)| key == name).map(|(_, value)| value.as_str())
    }

    /// Whether this is `<link rel="…">` with that relation.
    pub fn is_link(&self, relation: &str) -> bool {
        self.name == "link" && self.get("rel") == Some(relation)
    }

    /// The tag's attributes in their order.
    pub fn attributes(&self) -> impl Iterator<Item = (&str, &str)> {
        self.attributes.iter().map(|(key, value)| (key.as_str(), value.as_str()))
    }
}

/// All start tags, in order.
pub fn tags(html: &str) -> Vec<Tag> {
    let mut found = Vec::new();
    let mut at = 0;
    while let Some(open) = html[at..].find('<').map(|i| at + i) {
        let rest = &html[open..];
        if rest.starts_with("<!--") {
            at = end_of(html, open + 4, "-->");
        } else if rest[1..].starts_with(|c: char| c.is_ascii_alphabetic()) {
            let tag = read_tag(html, open);
            at = tag.place.end;
            found.push(tag);
        } else {
            at = open + 1;
        }
    }
    found
}

/// Replaces pieces of `text`. The pieces must not overlap; they may come in any order.
pub fn replace(text: &str, mut edits: Vec<(Range<usize>, String)>) -> String {
    edits.sort_by_key(|(place, _)| place.start);
    let mut result = String::with_capacity(text.len());
    let mut at = 0;
    for (place, new) in edits {
        result.push_str(&text[at..place.start]);
        result.push_str(&new);
        at = place.end;
    }
    result.push_str(&text[at..]);
    result
}

/// The place just after the next `mark`, or the end of the text.
fn end_of(html: &str, from: usize, mark: &str) -> usize {
    html[from..].find(mark).map_or(html.len(), |i| from + i + mark.len())
}

fn read_tag(html: &str, open: usize) -> Tag {
    let mut reader = Reader { html, at: open + 1 };
    let name = reader.take_while(|c| !c.is_ascii_whitespace() && c != '>' && c != '/').to_ascii_lowercase();
    let mut attributes = Vec::new();
    loop {
        reader.take_while(|c| c.is_ascii_whitespace() || c == '/');
        let key = reader.take_while(|c| !c.is_ascii_whitespace() && !matches!(c, '>' | '/' | '='));
        if key.is_empty() {
            break;
        }
        let key = key.to_ascii_lowercase();
        reader.take_while(|c| c.is_ascii_whitespace());
        let value = if reader.skip("=") {
            reader.take_while(|c| c.is_ascii_whitespace());
            reader.value().to_owned()
        } else {
            String::new()
        };
        attributes.push((key, value));
    }
    reader.take_while(|c| c != '>');
    reader.skip(">");

    let mut place = open..reader.at;
    let mut text = reader.at..reader.at;
    if name == "script" || name == "style" {
        let lower = html[reader.at..].to_ascii_lowercase();
        text.end = lower.find(&format!("</{name}")).map_or(html.len(), |i| reader.at + i);
        place.end = end_of(html, text.end, ">");
    }
    Tag { name, attributes, place, text }
}

struct Reader<'a> {
    html: &'a str,
    at: usize,
}

impl<'a> Reader<'a> {
    fn take_while(&mut self, wanted: impl Fn(char) -> bool) -> &'a str {
        let rest = &self.html[self.at..];
        let length = rest.find(|c| !wanted(c)).unwrap_or(rest.len());
        self.at += length;
        &rest[..length]
    }

    fn skip(&mut self, mark: &str) -> bool {
        let there = self.html[self.at..].starts_with(mark);
        if there {
            self.at += mark.len();
        }
        there
    }

    fn value(&mut self) -> &'a str {
        for quote in ['"', '\''] {
            if self.html[self.at..].starts_with(quote) {
                self.at += 1;
                let value = self.take_while(|c| c != quote);
                self.skip(if quote == '"' { "\"" } else { "'" });
                return value;
            }
        }
        self.take_while(|c| !c.is_ascii_whitespace() && c != '>')
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn attributes_quoted_bare_and_without_value() {
        let html = r#"<link data-trunk rel="css" href='a b.css' data-x=3 />"#;
        let found = tags(html);
        assert_eq!(found.len(), 1);
        let tag = &found[0];
        assert_eq!(tag.name, "link");
        assert_eq!(tag.get("data-trunk"), Some(""));
        assert_eq!(tag.get("href"), Some("a b.css"));
        assert_eq!(tag.get("data-x"), Some("3"));
        assert_eq!(tag.get("id"), None);
        assert_eq!(tag.place, 0..html.len());
        assert!(tag.is_link("css") && !tag.is_link("icon"));
    }

    #[test]
    fn comments_and_the_text_of_scripts_hold_no_tags() {
        let html = "<!doctype html><!-- <link rel=css> --><SCRIPT>if (a<b) '<p>'</SCRIPT><p title='a>b'>1 < 2</p>";
        let found = tags(html);
        let names: Vec<&str> = found.iter().map(|tag| tag.name.as_str()).collect();
        assert_eq!(names, ["script", "p"]);
        assert_eq!(&html[found[0].text.clone()], "if (a<b) '<p>'");
        assert_eq!(&html[found[0].place.clone()], "<SCRIPT>if (a<b) '<p>'</SCRIPT>");
        assert_eq!(found[1].get("title"), Some("a>b"));
    }

    #[test]
    fn broken_html_ends_the_reading_and_nothing_worse() {
        for html in ["<", "<a", "<a href", "<a href=", "<a href=\"x", "<!-- x", "<script>x", "<ä>", "</a", "<a ==>"] {
            for tag in tags(html) {
                assert!(tag.place.end <= html.len());
            }
        }
    }

    #[test]
    fn pieces_are_replaced_in_place() {
        assert_eq!(replace("abcdef", vec![(4..5, String::new()), (1..3, "X".into())]), "aXdf");
        assert_eq!(replace("abc", Vec::new()), "abc");
        assert_eq!(replace("abc", vec![(1..1, "-".into())]), "a-bc");
    }
}
