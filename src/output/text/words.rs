//! Numbers and lists as the terminal shows them.

use crate::base::shown::grouped;

pub use crate::base::shown::three_digits as short;

/// `2`, `2 and 13`, `2, 13 and 28`.
pub fn list<T: ToString>(items: &[T]) -> String {
    let words: Vec<String> = items.iter().map(T::to_string).collect();
    match words.as_slice() {
        [] => String::new(),
        [one] => one.clone(),
        [front @ .., last] => format!("{} and {last}", front.join(", ")),
    }
}

/// `1 day`, `2 days`.
pub fn counted(count: usize, one: &str) -> String {
    if count == 1 {
        format!("1 {one}")
    } else {
        format!("{} {one}s", grouped(count))
    }
}

/// With a capital, to begin a title; pH stays pH.
pub fn capital(words: &str) -> String {
    if words.starts_with("pH") {
        return words.to_string();
    }
    let mut letters = words.chars();
    match letters.next() {
        Some(first) => first.to_uppercase().chain(letters).collect(),
        None => String::new(),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn lists_read_like_speech() {
        assert_eq!(list(&[2, 13, 28]), "2, 13 and 28");
        assert_eq!(counted(1, "change"), "1 change");
    }
}
