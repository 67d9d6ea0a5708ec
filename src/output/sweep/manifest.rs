//! `manifest.json` of a sweep: enough to repeat it. No clock and no machine is in it.

use serde_json::json;

use super::Story;

/// The manifest as text, ending with a line feed.
pub fn text(story: &Story<'_>) -> String {
    let options = story.options.iter();
    let options = options.map(|(name, value)| json!({ "name": name, "value": value }));
    let files = story.files.iter();
    let files = files.map(|(path, text)| json!({ "path": path, "text": text }));
    let points = story.sweep.points.iter();
    let failed: usize = points
        .map(|point| point.members.len() - point.curve.members)
        .sum();
    let resolved = story.case.resolved.iter();
    let resolved = resolved.map(|one| json!({ "path": one.path, "value": one.value }));
    let whole = json!({
        "program": env!("CARGO_PKG_NAME"),
        "version": env!("CARGO_PKG_VERSION"),
        "scenario": {
            "name": story.case.name,
            "last_day": story.sweep.last_day,
            "files": files.collect::<Vec<_>>(),
        },
        "options": options.collect::<Vec<_>>(),
        "points": story.sweep.points.len(),
        "failed": failed,
        "resolved": resolved.collect::<Vec<_>>(),
    });
    format!("{whole:#}\n")
}
