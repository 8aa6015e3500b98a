//! Everything outside the page that can fail; each failure is a value.

pub(crate) mod address;
pub(crate) mod files;
pub(crate) mod focus;
pub(crate) mod folds;
pub(crate) mod offline;
pub(crate) mod print;
pub(crate) mod scanned;
pub(crate) mod storage;
