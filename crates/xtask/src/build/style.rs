//! The style sheet as it is sent: without comments, and without blanks that mean nothing.

/// Signs beside which a blank means nothing, wherever they stand. Not `:`, before which it is a part of a selector.
const APART: [char; 5] = ['{', '}', ';', ',', '>'];

/// Makes a style sheet small. What stands between quotes is left as it is.
pub(super) fn small(sheet: &str) -> String {
    let mut small = String::with_capacity(sheet.len());
    let mut rest = sheet;
    while let Some(next) = rest.chars().next() {
        if let Some(comment) = rest.strip_prefix("/*") {
            rest = comment.split_once("*/").map_or("", |(_, after)| after);
        } else if next.is_whitespace() {
            rest = rest.trim_start();
            // whether it is needed is seen by what stands on both sides of it
            if !small.is_empty() && !small.ends_with([' ', ':']) && !small.ends_with(APART) {
                small.push(' ');
            }
        } else {
            let length = if next == '"' { quoted(rest) } else { next.len_utf8() };
            if APART.contains(&next) && small.ends_with(' ') {
                small.pop();
            }
            if next == '}' && small.ends_with(';') {
                small.pop();
            }
            let (piece, after) = rest.split_at(length);
            small.push_str(piece);
            rest = after;
        }
    }
    small
}

/// How long a text between quotes is, its quotes included.
fn quoted(text: &str) -> usize {
    let inside = text.get(1..).unwrap_or_default();
    inside.find('"').map_or(text.len(), |end| end + 2)
}

#[cfg(test)]
mod tests {
    use super::small;

    #[test]
    fn what_means_nothing_is_left_out() {
        let sheet = "/* The frame. */\nmain , .a > b { margin: 0 auto; width: calc(1px + 2px); }\n\n@media print {\n  .a :is(.b) { color: red; }\n}\n";
        assert_eq!(
            small(sheet),
            "main,.a>b{margin:0 auto;width:calc(1px + 2px)}@media print{.a :is(.b){color:red}}"
        );
    }

    #[test]
    fn what_stands_between_quotes_is_left() {
        let sheet = ".a::before { content: \"→ /* ; } \"; }";
        assert_eq!(small(sheet), ".a::before{content:\"→ /* ; } \"}");
    }
}
