//! A choice as a scenario file that starts from the given one: ready to run.

use std::path::{Component, Path, PathBuf, absolute};

use crate::analysis::calendar::choice::Choice;
use crate::analysis::case::Case;
use crate::base::clock::TimeOfDay;
use crate::base::units::digits;
use crate::output::text::words::counted;

use super::Story;

/// Name of the file of a choice.
pub fn name(place: usize) -> String {
    format!("choice-{}.toml", place + 1)
}

/// The file of a choice.
pub fn text(story: &Story<'_>, place: usize, choice: &Choice) -> String {
    let (case, score) = (story.plan.case, &choice.score);
    let mut text = format!(
        "# Found by search: {}, {} L in all. Of 100 plausible tanks that the search had not seen, {} kept\n\
         # what was asked for. A forecast does not replace a test before animals go in.\n\n\
         based_on = {}\n\
         name = {}\n\n\
         [changes]\n",
        counted(score.visits, "change"),
        score.litres.round(),
        score.of_100().floor(),
        quoted(&from(story.folder, story.file)),
        quoted(&format!("{}, calendar {}", case.name, place + 1)),
    );
    for entry in entries(case) {
        text += &format!("{} = \"none\"\n", key(entry));
    }
    let time = case.calendar.as_ref().map_or(0, |wish| wish.minute);
    let mut shares: Vec<f64> = choice.changes.iter().map(|&(_, share)| share).collect();
    shares.sort_by(f64::total_cmp);
    shares.dedup();
    for (number, share) in shares.into_iter().enumerate() {
        let of = choice.changes.iter().filter(|(_, own)| *own == share);
        let days: Vec<String> = of.map(|(day, _)| day.to_string()).collect();
        text += &format!(
            "found_{} = {{ days = [{}], time = \"{}\", share = \"{} %\" }}\n",
            number + 1,
            days.join(", "),
            TimeOfDay(time),
            digits(100.0 * share)
        );
    }
    text
}

/// The entries of `[changes]` of a plan, each once.
fn entries(case: &Case) -> Vec<&str> {
    let changes = case
        .input
        .events
        .iter()
        .filter(|event| event.kind.is_change());
    let mut names: Vec<&str> = changes
        .filter_map(|event| event.name.strip_prefix("changes."))
        .collect();
    names.sort_unstable();
    names.dedup();
    names
}

/// A key, in quotes where it must be.
fn key(name: &str) -> String {
    let is_bare = |sign: char| sign.is_ascii_alphanumeric() || sign == '_' || sign == '-';
    match !name.is_empty() && name.chars().all(is_bare) {
        true => name.to_string(),
        false => quoted(name),
    }
}

/// A text of TOML.
fn quoted(text: &str) -> String {
    let mut out = String::from("\"");
    for sign in text.chars() {
        match sign {
            '"' | '\\' => out.extend(['\\', sign]),
            sign if sign.is_control() => out += &format!("\\u{:04X}", u32::from(sign)),
            sign => out.push(sign),
        }
    }
    out + "\""
}

/// How a file is named from within a folder.
fn from(folder: &Path, file: &Path) -> String {
    let (Ok(folder), Ok(file)) = (absolute(folder), absolute(file)) else {
        return file.display().to_string();
    };
    let (from, to): (Vec<Component<'_>>, Vec<Component<'_>>) =
        (folder.components().collect(), file.components().collect());
    let shared = from.iter().zip(&to).take_while(|(a, b)| a == b).count();
    if shared == 0 {
        return file.display().to_string(); // on another drive
    }
    let up = from[shared..].iter().map(|_| Component::ParentDir);
    let path: PathBuf = up.chain(to[shared..].iter().copied()).collect();
    path.display().to_string().replace('\\', "/")
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_file_is_named_from_within_the_folder() {
        let name = |folder: &str, file: &str| from(Path::new(folder), Path::new(file));
        assert_eq!(
            name("/a/output/found", "/a/scenarios/x.toml"),
            "../../scenarios/x.toml"
        );
        assert_eq!(name("/a/found", "/a/found/x.toml"), "x.toml");
        assert_eq!(name("out/found", "x.toml"), "../../x.toml");
    }

    #[test]
    fn texts_and_keys_are_quoted_as_toml_has_it() {
        assert_eq!(
            quoted("say \"now\" \\ \n"),
            "\"say \\\"now\\\" \\\\ \\u000A\""
        );
        assert_eq!(
            (key("late-1"), key("my own")),
            ("late-1".into(), "\"my own\"".into())
        );
    }
}
