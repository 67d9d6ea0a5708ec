//! Where a figure passes its limit on a grid.

use crate::analysis::compare::lines::Line;
use crate::analysis::compare::value::Value;
use crate::analysis::figure_list::Better;
use crate::analysis::limits::Limits;

/// A limit that some points of a grid keep and others do not.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Border {
    /// The limit, in the unit of the figure.
    pub at: f64,
    /// Which way the figure is better.
    better: Better,
}

impl Border {
    /// The border of a figure; none where it has no limit, or where all points are on one side of it.
    pub fn of(line: &Line, limits: &Limits, last_day: u32) -> Option<Border> {
        let at = match is_ready_day(line) {
            true => middle_day(&line.values, last_day)?,
            false => limit(line.name, limits)?,
        };
        let border = Border {
            at,
            better: line.better,
        };
        let kept = line.values.iter().filter(|value| border.is_kept(value));
        let kept = kept.count();
        (kept > 0 && kept < line.values.len()).then_some(border)
    }
    /// Whether a point keeps it, by its middle; where there is nothing there is nothing to break.
    pub fn is_kept(&self, value: &Value) -> bool {
        value.middle().is_none_or(|middle| match self.better {
            Better::More => middle >= self.at,
            _ => middle <= self.at,
        })
    }
}

/// Whether a figure is a day by which so many are ready.
pub fn is_ready_day(line: &Line) -> bool {
    line.unit == "day" && line.name.starts_with("ready_")
}

/// The limit of a figure, in its unit; of how many are ready, half of them.
pub fn limit(name: &str, limits: &Limits) -> Option<f64> {
    Some(match name {
        "tan_peak_mg_n_per_l" => limits.total_ammonia.value,
        "free_ammonia_peak_mg_n_per_l" => limits.free_ammonia.value,
        "nitrite_peak_mg_n_per_l" => limits.nitrite.value,
        "oxygen_low_mg_per_l" => limits.oxygen.value,
        "co2_high_mg_per_l" => limits.co2.value,
        "temperature_jump_c" => limits.temperature_jump.value,
        "ph_jump" => limits.ph_jump.value,
        super::point::READY_OF_100 => 50.0,
        _ => return None,
    })
}

/// The whole day in the middle of the grid's range; a day later than the last counts as the next one.
fn middle_day(values: &[Value], last_day: u32) -> Option<f64> {
    let later = f64::from(last_day + 1);
    let days = values.iter().filter_map(Value::middle);
    let days: Vec<f64> = days.map(|day| day.min(later)).collect();
    let first = days.iter().copied().reduce(f64::min)?;
    let last = days.iter().copied().reduce(f64::max)?;
    Some(((first + last) / 2.0).floor())
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::analysis::compare::alike::Alike;

    fn line(name: &'static str, unit: &'static str, better: Better, values: &[Value]) -> Line {
        Line {
            name,
            unit,
            what: "",
            short: "made up",
            better,
            told_from: 0.1,
            values: values.to_vec(),
            alike: Alike::default(),
        }
    }

    #[test]
    fn a_border_parts_the_points_that_keep_a_limit_from_the_others() {
        let limits = Limits::default();
        let limit = limits.oxygen.value;
        let nights = [limit - 0.1, limit, limit + 1.0].map(Value::One);
        let oxygen = |values| line("oxygen_low_mg_per_l", "mg/L", Better::More, values);
        let border = Border::of(&oxygen(&nights), &limits, 56).unwrap();
        let kept = nights.map(|value| border.is_kept(&value));
        assert_eq!(kept, [false, true, true]);
        assert_eq!(Border::of(&oxygen(&nights[1..]), &limits, 56), None);
    }

    #[test]
    fn ready_days_are_parted_in_the_middle_of_their_range_later_ones_at_its_end() {
        let days = [Value::One(30.0), Value::One(40.0), Value::Later];
        let ready = line("ready_50_of_100_day", "day", Better::Less, &days);
        let border = Border::of(&ready, &Limits::default(), 56).unwrap();
        // half way from 30 to 57
        assert_eq!(border.at, 43.0);
        assert!(border.is_kept(&days[1]) && !border.is_kept(&days[2]));
    }
}
