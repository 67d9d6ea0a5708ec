//! Numbers as people read them: by their first figures, and large counts in groups.

/// A number with about three figures that count: `0.043`, `0.43`, `4.31`, `43.1`, `431`.
pub fn three_digits(value: f64) -> String {
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

/// Counts have their thousands apart from this one on.
const GROUPED_FROM: usize = 10_000;

/// A count with its thousands apart where it is large: `4096`, `106,496`.
pub fn grouped(count: usize) -> String {
    if count < GROUPED_FROM {
        return count.to_string();
    }
    let digits = count.to_string();
    let thousands = digits.as_bytes().rchunks(3).rev();
    let groups: Vec<String> = thousands
        .map(|group| group.iter().map(|&digit| char::from(digit)).collect())
        .collect();
    groups.join(",")
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn numbers_keep_the_figures_that_count() {
        let written = [412.34, 27.96, 4.312, 0.4312, 0.043, 0.0012, -0.0].map(three_digits);
        assert_eq!(
            written,
            ["412", "28.0", "4.31", "0.43", "0.043", "0.0012", "0"]
        );
    }

    #[test]
    fn large_counts_have_their_thousands_apart() {
        let written = [9_999, 10_000, 106_496, 1_000_000].map(grouped);
        assert_eq!(written, ["9999", "10,000", "106,496", "1,000,000"]);
    }
}
