//! One documented key, of a scenario or of a study.

/// One documented key.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Key {
    /// Dotted path; `NAME` stands for a name of your own.
    pub path: &'static str,
    /// What it means.
    pub meaning: &'static str,
    /// A value as it is written after the equals sign.
    pub example: &'static str,
    /// What holds when it is left out: a value, or words; `required` when it must be there;
    /// empty when nothing holds.
    pub default: &'static str,
    /// Where a default value comes from.
    pub provenance: &'static str,
}

/// A key in one line.
pub(super) const fn key(
    path: &'static str,
    meaning: &'static str,
    example: &'static str,
    default: &'static str,
    provenance: &'static str,
) -> Key {
    Key {
        path,
        meaning,
        example,
        default,
        provenance,
    }
}
