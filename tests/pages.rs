//! Pages for the browser: what holds for any of them by their text, and in a real browser where one is installed.

use std::collections::BTreeSet;
use std::path::{Path, PathBuf};
use std::process::Command as Process;

use assert_cmd::Command;
use tempfile::TempDir;

/// Most bytes of the page of a lesson.
const MOST_BYTES: usize = 400_000;
/// Where a browser may be.
const BROWSERS: [&str; 3] = [
    "/usr/bin/chromium",
    "/usr/bin/chromium-browser",
    "/usr/bin/google-chrome",
];

const TANK: &str = "name = \"<b>&\\\"x\"\nlength = 10\n[tank]\ninside = \"60 x 30 x 36 cm\"\nwater_line = \"33 cm\"\n\
    [soil]\nkind = \"medium\"\namount = \"9 L\"\n[changes]\nearly = { days = \"1..7\", every = 1, share = \"50 %\" }\n\
    [light]\non = \"11:00..18:00\"\n[plants]\nstems = { cover = \"40 %\" }\n";

fn made(arguments: &[&str]) -> TempDir {
    let room = tempfile::tempdir().unwrap();
    std::fs::write(room.path().join("tank.toml"), TANK).unwrap();
    let other = "based_on = \"tank.toml\"\nname = \"none\"\n[changes]\nearly = \"none\"\n";
    std::fs::write(room.path().join("none.toml"), other).unwrap();
    let mut command = Command::cargo_bin("firstfill").expect("the program");
    let command = command.current_dir(room.path()).args(arguments);
    command.args(["--out", "out"]).assert().success();
    room
}

fn text(room: &TempDir, name: &str) -> String {
    std::fs::read_to_string(room.path().join("out").join(name)).unwrap()
}

/// The values of an attribute, in order.
fn values<'a>(html: &'a str, attribute: &str) -> Vec<&'a str> {
    let opening = format!(" {attribute}=\"");
    let parts = html.split(&opening).skip(1);
    parts.filter_map(|part| part.split('"').next()).collect()
}

/// What holds for any page: one file, ids of their own, labels that name something, headings in order, a language.
fn is_sound(html: &str) {
    assert!(html.starts_with("<!DOCTYPE html>"));
    for part in [
        "<html lang=\"en-GB\"",
        "name=\"viewport\"",
        "class=\"skip\"",
        "<main",
        "Cautions",
        "How was this computed?",
    ] {
        assert!(html.contains(part), "no {part}");
    }
    let outside = ["http://", "https://"]
        .iter()
        .flat_map(|sign| html.split(sign).skip(1));
    for address in outside {
        assert!(
            address.starts_with("www.w3.org/2000/svg"),
            "names {}",
            &address[..40.min(address.len())]
        );
    }
    let ids = values(html, "id");
    let own: BTreeSet<&str> = ids.iter().copied().collect();
    assert_eq!(own.len(), ids.len(), "an id stands twice");
    let named = ["for", "aria-labelledby"]
        .into_iter()
        .flat_map(|name| values(html, name));
    for name in named.flat_map(str::split_whitespace) {
        assert!(own.contains(name), "nothing has the id {name}");
    }
    let mut level = 0;
    for heading in html.split("<h").skip(1) {
        let Some(next) = heading.chars().next().and_then(|c| c.to_digit(10)) else {
            continue;
        };
        assert!(next <= level + 1, "from heading {level} to {next}");
        level = next;
    }
    let pictures = html.matches("<svg").count();
    let told =
        html.matches("role=\"img\"").count() + html.matches("aria-hidden=\"true\"><path").count();
    assert!(
        told >= pictures,
        "{told} of {pictures} pictures are told or hidden"
    );
}

#[test]
fn the_page_of_a_lesson_is_one_sound_file_that_is_not_too_large() {
    let room = made(&["lesson", "early-changes"]);
    let html = text(&room, "lesson.html");
    is_sound(&html);
    assert!(html.len() < MOST_BYTES, "{} bytes", html.len());
    for part in [
        "type=\"range\"",
        "aria-live",
        "prefers-color-scheme",
        "prefers-reduced-motion",
        "@media print",
    ] {
        assert!(html.contains(part), "no {part}");
    }
    // without a script the step that is shown first is there
    assert!(html.contains("data-curve=\"0\" d=\"M"));
}

#[test]
fn names_of_the_user_are_escaped_on_the_page_of_a_run() {
    let room = made(&["run", "tank.toml", "--members", "20", "--page"]);
    let html = text(&room, "page.html");
    is_sound(&html);
    assert!(
        html.contains("&lt;b&gt;&amp;") && !html.contains("<b>&"),
        "not escaped"
    );
    for part in ["The plan", "Charts", "Ready"] {
        assert!(html.contains(part), "no {part}");
    }
    let manifest = text(&room, "manifest.json");
    assert!(
        manifest.contains("\"page\""),
        "a repeat would lack the page"
    );
}

#[test]
fn comparisons_and_sweeps_have_pages_too() {
    let room = made(&[
        "compare",
        "tank.toml",
        "none.toml",
        "--members",
        "20",
        "--page",
    ]);
    let html = text(&room, "page.html");
    is_sound(&html);
    assert!(html.contains("Where the files differ") && html.contains("changes.early"));
    let room = made(&[
        "sweep",
        "tank.toml",
        "--vary",
        "changes.early.every=1..3:3",
        "--members",
        "20",
        "--page",
    ]);
    is_sound(&text(&room, "page.html"));
}

/// What it takes to look at a page in a browser; none, and why, where something is missing.
fn browser() -> Option<(&'static str, PathBuf)> {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/browser");
    let installed = BROWSERS.into_iter().find(|path| Path::new(path).exists());
    let has_node = Process::new("node").arg("--version").output().is_ok();
    let has_modules = folder.join("node_modules/axe-core").exists();
    match (installed, has_node, has_modules) {
        (Some(browser), true, true) => Some((browser, folder)),
        (None, ..) => skipped("no chromium is installed"),
        (_, false, _) => skipped("node is not installed"),
        _ => skipped("node modules are missing: npm ci in tests/browser"),
    }
}

fn skipped<T>(why: &str) -> Option<T> {
    println!("not looked at in a browser: {why}");
    None
}

/// Looks at a page; SHOTS names a folder for pictures of it.
fn looked_at(kind: &str, name: &str, page: &Path) {
    let Some((browser, folder)) = browser() else {
        return;
    };
    let mut look = Process::new("node");
    look.arg(folder.join("pages.mjs"))
        .args([browser, kind])
        .arg(page);
    if let Some(shots) = std::env::var_os("SHOTS") {
        let shots = PathBuf::from(shots).join(name);
        std::fs::create_dir_all(&shots).unwrap();
        look.arg(shots);
    }
    let seen = look.output().unwrap();
    let words = String::from_utf8_lossy(&seen.stdout).into_owned();
    let errors = String::from_utf8_lossy(&seen.stderr).into_owned();
    assert!(seen.status.success(), "{name}:\n{words}{errors}");
}

#[test]
fn lessons_work_in_a_browser_by_keyboard_touch_ear_and_on_paper() {
    for key in ["early-changes", "air-at-night"] {
        let room = made(&["lesson", key]);
        looked_at("lesson", key, &room.path().join("out/lesson.html"));
    }
}

#[test]
fn the_page_of_a_run_works_in_a_browser() {
    let room = made(&["run", "tank.toml", "--members", "20", "--page"]);
    looked_at("report", "run", &room.path().join("out/page.html"));
}
