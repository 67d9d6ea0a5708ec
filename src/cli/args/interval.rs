//! How often a row is written, as it is typed.

const MINUTES_A_DAY: u32 = 24 * 60;
const STEP_MINUTES: u32 = 5;

/// Reads `60min`, `2h` or `30 min`.
pub fn minutes_between_rows(text: &str) -> Result<u32, String> {
    let ways = "write whole minutes that are a multiple of 5 and divide 24 h, such as 5min, 10min, 30min, 60min or 6h";
    let text = text.trim();
    let split = text
        .find(|c: char| !c.is_ascii_digit())
        .unwrap_or(text.len());
    let (digits, unit) = text.split_at(split);
    let factor = match unit.trim() {
        "min" | "minutes" => 1,
        "h" | "hours" => 60,
        "" => return Err(format!("\"{text}\" lacks its unit; {ways}")),
        _ => return Err(format!("\"{text}\" is not understood; {ways}")),
    };
    let minutes = digits
        .parse::<u32>()
        .ok()
        .and_then(|number| number.checked_mul(factor))
        .ok_or_else(|| format!("\"{text}\" is not understood; {ways}"))?;
    let fits = minutes > 0
        && minutes.is_multiple_of(STEP_MINUTES)
        && MINUTES_A_DAY.is_multiple_of(minutes);
    if fits {
        Ok(minutes)
    } else {
        Err(format!(
            "rows every {minutes} minutes do not fit a day; {ways}"
        ))
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn rows_come_every_so_many_minutes_or_hours() {
        let read = ["60min", "2h", "5 min", "1440min"].map(minutes_between_rows);
        assert_eq!(read, [Ok(60), Ok(120), Ok(5), Ok(1440)]);
    }

    #[test]
    fn intervals_that_do_not_fit_a_day_are_refused_with_ways_to_write_one() {
        for wrong in [
            "60",
            "7min",
            "25min",
            "0min",
            "1.5h",
            "soon",
            "99999999h",
            "48h",
        ] {
            let refusal = minutes_between_rows(wrong).unwrap_err();
            assert!(refusal.contains("5min, 10min"), "{wrong}: {refusal}");
        }
    }
}
