//! The list of all parameters.

use super::parameter::ParameterSpec;
use std::sync::LazyLock;

static ALL: LazyLock<Vec<&'static ParameterSpec>> = LazyLock::new(Vec::new);

/// Every parameter, in the order of declaration.
pub fn all() -> &'static [&'static ParameterSpec] {
    &ALL
}
/// Place of a parameter in [`all`].
pub fn index(id: &str) -> Option<usize> {
    ALL.iter().position(|s| s.id == id)
}
/// The declaration of a parameter.
pub fn spec(id: &str) -> Option<&'static ParameterSpec> {
    index(id).map(|at| ALL[at])
}
