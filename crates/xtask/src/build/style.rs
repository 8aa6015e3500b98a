//! The style sheet as it is sent: without comments, and without blanks that mean nothing.

use anyhow::{Result, anyhow};
use minifier::css;

/// Makes a style sheet small.
///
/// # Errors
///
/// Where it is none.
pub(super) fn small(sheet: &str) -> Result<String> {
    let small = css::minify(sheet).map_err(|error| anyhow!("the style sheet: {error}"))?;
    Ok(small.to_string())
}

#[cfg(test)]
mod tests {
    use super::small;

    #[test]
    fn what_means_something_is_left() {
        let sheet = "/* The frame. */\nmain , .a > b { margin: 0 auto; width: calc(1px + 2px); }\n.a::before { content: \"→ /* ; } \"; }\n@media print {\n  .a :is(.b) { color: red; }\n}\n";
        let small = small(sheet).expect("it is one");
        for kept in ["calc(1px + 2px)", "content:\"→ /* ; } \"", ".a :is(.b)", "margin:0 auto"] {
            assert!(small.contains(kept), "{small}");
        }
        assert!(!small.contains("frame") && !small.contains('\n'), "{small}");
    }
}
