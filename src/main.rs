//! The command `firstfill`.

fn main() {}
