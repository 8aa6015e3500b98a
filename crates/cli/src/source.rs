//! Where a plan is read from.

use std::{
    fs::{self, File},
    io::{self, Read},
    path::{Path, PathBuf},
};

use quietpin_core::plan::{MOST_BYTES, ReadError};

/// Where a plan is.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Source {
    /// The standard input.
    Input,
    /// A file.
    File(PathBuf),
}

impl Source {
    /// The text of the plan.
    ///
    /// # Errors
    /// Why there is none, for a person. No more than a plan's length is ever read.
    pub fn read(&self) -> Result<String, String> {
        match self {
            Self::Input => text_of(io::stdin().lock(), None),
            Self::File(path) => open(path).and_then(|(file, size)| text_of(file, size)),
        }
        .map_err(|problem| format!("{}: {problem}", name(self)))
    }
}

/// What a person calls it.
pub fn name(source: &Source) -> String {
    match source {
        Source::Input => "standard input".to_owned(),
        Source::File(path) => path.display().to_string(),
    }
}

fn open(path: &Path) -> Result<(File, Option<u64>), String> {
    let metadata = fs::metadata(path).map_err(|error| match error.kind() {
        io::ErrorKind::NotFound => "there is no such file".to_owned(),
        _ => format!("can't be read: {error}"),
    })?;
    if metadata.is_dir() {
        return Err("this is a folder; name the plan's file in it".to_owned());
    }
    let file = File::open(path).map_err(|error| format!("can't be read: {error}"))?;
    Ok((file, metadata.is_file().then_some(metadata.len())))
}

/// The text of a plan, and no further than a plan may go: an endless source ends too.
fn text_of(source: impl Read, size: Option<u64>) -> Result<String, String> {
    let limit = MOST_BYTES as u64;
    if let Some(bytes) = size.filter(|bytes| *bytes > limit) {
        let bytes = usize::try_from(bytes).unwrap_or(usize::MAX);
        return Err(ReadError::TooLarge { bytes }.to_string());
    }
    let mut bytes = Vec::new();
    let read = source.take(limit + 1).read_to_end(&mut bytes);
    let length = read.map_err(|error| format!("can't be read: {error}"))?;
    if length > MOST_BYTES {
        return Err(format!("this is longer than {MOST_BYTES} bytes; a plan is far shorter"));
    }
    String::from_utf8(bytes).map_err(|error| not_text(&error))
}

fn not_text(error: &std::string::FromUtf8Error) -> String {
    let is_utf16 = matches!(error.as_bytes(), [0xff, 0xfe, ..] | [0xfe, 0xff, ..]);
    if is_utf16 {
        return "this is text in UTF-16; save it as UTF-8".to_owned();
    }
    let place = error.utf8_error().valid_up_to() + 1;
    format!("this is not text in UTF-8 (byte {place}); a plan is JSON text")
}

#[cfg(test)]
mod tests {
    use super::*;

    #[track_caller]
    fn check_fails(bytes: &[u8], expected: &str) {
        let error = text_of(bytes, None).expect_err(expected);
        assert!(error.contains(expected), "{error}");
    }

    #[test]
    fn only_text_of_a_plans_length_is_read() {
        assert_eq!(text_of("{}".as_bytes(), Some(2)), Ok("{}".to_owned()), "text is read");
        check_fails(&[b'{', 0xff, b'}'], "byte 2");
        check_fails(&[0xff, 0xfe, b'{', 0], "UTF-16");
        let endless = text_of(io::repeat(b' '), None).expect_err("an endless source");
        assert!(endless.contains("longer than"), "{endless}");
        let huge = text_of(io::empty(), Some(5_000_000_000)).expect_err("a huge file");
        assert!(huge.contains("5000000000 bytes"), "{huge}");
    }
}
