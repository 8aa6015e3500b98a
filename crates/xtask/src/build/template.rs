//! Filling the blanks of a hand-written file.

use anyhow::{Result, bail};

/// Puts each value in place of `{{its name}}`. An unknown blank, or a value without a blank, is a mistake.
pub(crate) fn fill(template: &str, values: &[(&str, &str)]) -> Result<String> {
    let mut filled = String::with_capacity(template.len());
    let mut used = vec![false; values.len()];
    let mut rest = template;
    while let Some((before, after)) = rest.split_once("{{") {
        let Some((name, behind)) = after.split_once("}}") else { bail!("a blank is not closed") };
        filled.push_str(before);
        let known = values.iter().zip(&mut used).find(|((value_name, _), _)| *value_name == name);
        let Some(((_, value), used)) = known else { bail!("there is no value for {{{{{name}}}}}") };
        filled.push_str(value);
        *used = true;
        rest = behind;
    }
    filled.push_str(rest);
    for ((name, _), used) in values.iter().zip(used) {
        if !used {
            bail!("nothing uses {{{{{name}}}}}");
        }
    }
    Ok(filled)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn blanks_are_filled_and_their_values_left_alone() {
        let filled = fill("<{{a}}|{{b}}|{{a}}>", &[("a", "{{b}}"), ("b", "2")]).unwrap();
        assert_eq!(filled, "<{{b}}|2|{{b}}>", "a value is not a template");
    }

    #[test]
    fn a_slip_in_a_template_is_told() {
        let told = |template| fill(template, &[("a", "1")]).unwrap_err().to_string();
        assert_eq!(told("{{a}}{{b}}"), "there is no value for {{b}}", "unknown");
        assert_eq!(told("plain"), "nothing uses {{a}}", "unused");
        assert_eq!(told("{{a"), "a blank is not closed", "open");
    }
}
