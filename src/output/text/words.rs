//! Numbers and lists as the terminal shows them.

/// A number with about three figures that count: `0.043`, `0.43`, `4.31`, `43.1`, `431`.
pub fn short(value: f64) -> String {
    let digits = match value.abs() {
        size if size >= 99.95 => 0,
        size if size >= 9.995 => 1,
        size if size >= 0.0995 => 2,
        size if size >= 0.00995 => 3,
        _ => 4,
    };
    let text = format!("{value:.digits$}");
    let is_zero = text.chars().all(|c| matches!(c, '0' | '.' | '-'));
    if is_zero { "0".into() } else { text }
}

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
        format!("{count} {one}s")
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn numbers_keep_the_figures_that_count() {
        let written = [412.34, 27.96, 4.312, 0.4312, 0.043, 0.0012, -0.0].map(short);
        assert_eq!(
            written,
            ["412", "28.0", "4.31", "0.43", "0.043", "0.0012", "0"]
        );
    }

    #[test]
    fn lists_read_like_speech() {
        assert_eq!(list(&[2, 13, 28]), "2, 13 and 28");
        assert_eq!(counted(1, "change"), "1 change");
    }
}
