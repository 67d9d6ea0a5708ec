//! Pages for the browser: one file each, without network, script framework or font of their own.

pub mod lesson;
