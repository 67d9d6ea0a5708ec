//! Storey 5: files out. Numbers become CSV, pictures, a manifest and the words on the terminal.

pub mod calendar;
mod cautions;
pub mod change_worth;
pub mod chart;
mod column_list;
pub mod columns;
pub mod compare;
pub mod csv;
pub mod doing;
pub mod files;
pub mod folder;
mod held;
pub mod kit;
pub mod lesson;
mod lever_words;
pub mod manifest;
pub mod number;
pub mod page;
pub mod place;
mod rename;
pub mod repeat;
pub mod study;
pub mod sweep;
pub mod table;
pub mod text;
pub mod waiting;
pub mod when;
