//! The options of `latest-fill`.

use std::path::PathBuf;

use clap::Args;
use jiff::civil::Date;

use super::plausible::Plausible;

/// Options of `latest-fill`.
#[derive(Debug, Clone, Args)]
#[command(
    arg_required_else_help = true,
    after_help = "Examples:\n  \
        firstfill latest-fill my-tank.toml --ready-by 2027-05-15\n      \
        how late it may be filled so that 90 of 100 plausible tanks are ready on that day\n  \
        firstfill latest-fill my-tank.toml --ready-by 2027-05-15 --of-100 50\n      \
        the same for 50 of 100"
)]
pub struct LatestFill {
    /// The scenario, a TOML file with a start
    #[arg(value_name = "FILE")]
    pub file: PathBuf,
    /// The day by which tanks are to be ready: year-month-day
    #[arg(long, value_name = "DATE", value_parser = date)]
    pub ready_by: Date,
    /// How many of 100 plausible tanks are to be ready
    #[arg(long, value_name = "N", default_value_t = 90, value_parser = clap::value_parser!(u8).range(1..=100))]
    pub of_100: u8,
    /// The plausible tanks.
    #[command(flatten)]
    pub on: Plausible,
}

/// Reads a date as scenarios have it.
fn date(text: &str) -> Result<Date, String> {
    let ways = "write year-month-day, such as 2027-05-15";
    text.trim()
        .parse()
        .map_err(|_| format!("it is no date; {ways}"))
}

#[cfg(test)]
mod tests {
    use super::date;

    #[test]
    fn what_is_no_date_is_refused_with_a_way_to_write_one() {
        assert!(date("2027-05-15").is_ok());
        for wrong in ["15.5.2027", "2027-02-30", "May", ""] {
            assert!(date(wrong).unwrap_err().contains("2027-05-15"), "{wrong}");
        }
    }
}
