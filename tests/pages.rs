//! Pages for the browser: what holds for any of them by their text, and in a real browser where one is installed.

use std::collections::BTreeSet;
use std::io::Write as _;
use std::path::{Path, PathBuf};
use std::process::Command as Process;
use std::sync::LazyLock;

use assert_cmd::Command;
use firstfill::analysis::case::Case;
use firstfill::analysis::compare::Common;
use firstfill::analysis::lesson::taught::Taught;
use firstfill::analysis::lesson::{LESSONS, Lesson};
use firstfill::base::stop::Stop;
use firstfill::output::lesson::tables;
use firstfill::output::page;
use firstfill::scenario;

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

const NONE: &str = "based_on = \"tank.toml\"\nname = \"none\"\n[changes]\nearly = \"none\"\n";

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

/// An empty folder of this test, where the pages of the last time may be looked at until the next.
fn empty(name: &str) -> PathBuf {
    let room = Path::new(env!("CARGO_TARGET_TMPDIR"))
        .join("pages")
        .join(name);
    let _ = std::fs::remove_dir_all(&room);
    std::fs::create_dir_all(&room).unwrap();
    room
}

/// Few tanks are enough: pages are judged here, not means.
const FEW: Common = Common {
    members: 4,
    seed: 1,
};

/// Writes page and curves of a lesson into a folder of its name.
fn write_lesson(lesson: &'static Lesson, room: &Path) {
    let loaded = scenario::lesson::read(lesson, None).expect("scenarios of our own");
    let cases: Vec<Case> = loaded.into_iter().map(|one| one.case).collect();
    let taught = Taught::of(lesson, &cases, FEW, &Stop::default(), |_, _| {}).unwrap();
    let page = page::lesson::page(&taught, &scenario::lesson::files(lesson)).unwrap();
    let curves = tables::curves(&taught).csv().unwrap();
    let folder = room.join(lesson.key);
    std::fs::create_dir(&folder).unwrap();
    std::fs::write(folder.join("lesson.html"), page).unwrap();
    std::fs::write(folder.join("curves.csv"), curves.bytes()).unwrap();
}

/// The pages of all lessons, made once for all tests.
fn lessons() -> &'static Path {
    static ROOM: LazyLock<PathBuf> = LazyLock::new(|| {
        let room = empty("lessons");
        for lesson in &LESSONS {
            write_lesson(lesson, &room);
        }
        room
    });
    &ROOM
}

#[test]
fn the_page_of_every_lesson_is_one_sound_file_that_is_not_too_large() {
    for lesson in &LESSONS {
        let file = lessons().join(lesson.key).join("lesson.html");
        let html = std::fs::read_to_string(file).unwrap();
        is_sound(&html);
        assert!(
            html.len() < MOST_BYTES,
            "{}: {} bytes",
            lesson.key,
            html.len()
        );
        for part in [
            "type=\"range\"",
            "aria-live",
            "prefers-color-scheme",
            "prefers-reduced-motion",
            "@media print",
            // without a script the step that is shown first is there
            "data-curve=\"0\" d=\"M",
        ] {
            assert!(html.contains(part), "{}: no {part}", lesson.key);
        }
        for step in lesson.steps {
            let told = html.matches(step.label).count();
            assert!(told > 3, "{}: {} is not told", lesson.key, step.label);
        }
    }
}

/// The pages of a run, a comparison and a sweep, made once for all tests: each in a folder of its command.
fn reports() -> &'static Path {
    static ROOM: LazyLock<PathBuf> = LazyLock::new(|| {
        let room = empty("reports");
        std::fs::write(room.join("tank.toml"), TANK).unwrap();
        std::fs::write(room.join("none.toml"), NONE).unwrap();
        let vary = ["--vary", "changes.early.every=1..3:3"];
        write_report(&room, "run", &["tank.toml"]);
        write_report(&room, "compare", &["tank.toml", "none.toml"]);
        write_report(&room, "sweep", &[&["tank.toml"], &vary[..]].concat());
        room
    });
    &ROOM
}

fn write_report(room: &Path, command: &str, arguments: &[&str]) {
    let mut program = Command::cargo_bin("firstfill").expect("the program");
    let program = program.current_dir(room).arg(command).args(arguments);
    let options = ["--members", "20", "--page", "--out", command];
    program.args(options).assert().success();
}

fn text(command: &str, name: &str) -> String {
    std::fs::read_to_string(reports().join(command).join(name)).unwrap()
}

/// Distance of a point from the nearest piece of a curve, all in units of the plot.
fn distance(curve: &[(f64, f64)], (x, y): (f64, f64)) -> f64 {
    let pieces = curve.windows(2).map(|two| {
        let ((ax, ay), (bx, by)) = (two[0], two[1]);
        let (dx, dy) = (bx - ax, by - ay);
        let length = dx * dx + dy * dy;
        let along = if length > 0.0 {
            (((x - ax) * dx + (y - ay) * dy) / length).clamp(0.0, 1.0)
        } else {
            0.0
        };
        let (off_x, off_y) = (x - ax - along * dx, y - ay - along * dy);
        (off_x * off_x + off_y * off_y).sqrt()
    });
    pieces.fold(f64::INFINITY, f64::min)
}

/// Units of a plot that a mark may lie beside its curve: what rounding to a tenth does.
const BESIDE: f64 = 0.2;

#[test]
fn every_mark_of_every_step_lies_on_a_curve_of_its_panel() {
    for lesson in &LESSONS {
        let file = lessons().join(lesson.key).join("lesson.html");
        let html = std::fs::read_to_string(file).unwrap();
        let (_, data) = html.split_once("id=\"data\">").unwrap();
        let data = data.split_once("</script>").unwrap().0;
        let data: serde_json::Value = serde_json::from_str(data).unwrap();
        let number = |value: &serde_json::Value| value.as_f64().unwrap();
        let (first, last) = (number(&data["first"]), number(&data["last"]));
        let steps = data["steps"].as_array().unwrap();
        let base = &steps[data["base"].as_u64().unwrap() as usize];
        for step in steps {
            for mark in step["marks"].as_array().unwrap() {
                let panel = &data["panels"][mark[0].as_u64().unwrap() as usize];
                let (low, high) = (number(&panel["low"]), number(&panel["high"]));
                let curve = |of: &serde_json::Value, trace: usize| -> Vec<(f64, f64)> {
                    let days = of["days"].as_array().unwrap().iter().map(number);
                    let values = of["curves"][trace].as_array().unwrap().iter().map(number);
                    let place = |(day, value): (f64, f64)| {
                        (
                            1000.0 * (day - first) / (last - first),
                            400.0 * (high - value) / (high - low),
                        )
                    };
                    days.zip(values).map(place).collect()
                };
                // a number that was moved is tied to its place by a line that begins there
                let leader = mark[4].as_str().unwrap();
                let on = match leader
                    .strip_prefix('M')
                    .and_then(|line| line.split_once('L'))
                {
                    Some((from, _)) => {
                        let (x, y) = from.split_once(' ').unwrap();
                        (x.parse().unwrap(), y.parse().unwrap())
                    }
                    None => (10.0 * number(&mark[1]), 4.0 * number(&mark[2])),
                };
                let traces = panel["traces"].as_array().unwrap();
                let traces = traces.iter().map(|trace| trace.as_u64().unwrap() as usize);
                let both = traces.flat_map(|trace| [curve(step, trace), curve(base, trace)]);
                let nearest = both.map(|curve| distance(&curve, on));
                let nearest = nearest.fold(f64::INFINITY, f64::min);
                let name = (lesson.key, &step["label"], &mark[3]);
                assert!(nearest < BESIDE, "{name:?} lies {nearest} beside its curve");
            }
        }
    }
}

/// A run of eight weeks with gas, plants, animals and plausible tanks, whose charts are full.
#[test]
fn the_page_of_a_long_run_is_not_too_large_and_is_written_for_who_has_no_files() {
    let room = empty("long");
    let scenario = Path::new(env!("CARGO_MANIFEST_DIR")).join("scenarios/handover-in-may.toml");
    let mut command = Command::cargo_bin("firstfill").expect("the program");
    let out = room.join("out");
    command.arg("run").arg(scenario);
    command
        .args(["--members", "64", "--page", "--out"])
        .arg(&out);
    command.assert().success();
    let html = std::fs::read_to_string(out.join("page.html")).unwrap();
    is_sound(&html);
    assert!(html.len() < MOST_BYTES, "{} bytes", html.len());
    let (_, result) = html.split_once("id=\"result\"").unwrap();
    let result = result.split_once("id=\"charts\"").unwrap().0;
    for part in [
        "(air.on)",
        "stock.small",
        ".toml",
        "--",
        "animals in in",
        "FILE",
    ] {
        assert!(!result.contains(part), "the result says {part}");
    }
    for part in [
        "class=\"headline\"",
        "Highest nitrite",
        "What it takes",
        "What held them back",
    ] {
        assert!(result.contains(part), "no {part}: {result}");
    }
    // every chart follows the colours of the page
    let charts = html.split_once("id=\"charts\"").unwrap().1;
    let charts = charts.split_once("How was this computed?").unwrap().0;
    assert!(!charts.contains("=\"#"), "a chart has a colour of its own");
}

#[test]
fn names_of_the_user_are_escaped_on_the_page_of_a_run() {
    let html = text("run", "page.html");
    is_sound(&html);
    assert!(
        html.contains("&lt;b&gt;&amp;") && !html.contains("<b>&"),
        "not escaped"
    );
    // no day of this tank has a date
    assert!(
        !html.contains("weekday") && html.contains(">day 1</th>") && html.contains("water out, L")
    );
    assert!(!html.contains("<div></div>"), "a heading without words");
    for part in ["The plan", "Charts", "What it takes"] {
        assert!(html.contains(part), "no {part}");
    }
    let manifest = text("run", "manifest.json");
    assert!(
        manifest.contains("\"page\""),
        "a repeat would lack the page"
    );
}

#[test]
fn comparisons_and_sweeps_have_pages_too() {
    let html = text("compare", "page.html");
    is_sound(&html);
    assert!(html.contains("Where the files differ") && html.contains("changes.early"));
    let (before, after) = html.split_once("id=\"charts\"").expect("charts");
    for part in ["class=\"headline\"", "The plans", "Two by two", "Why"] {
        assert!(before.contains(part), "no {part} before the charts");
    }
    assert!(after.contains("All figures") && after.contains("Cautions"));
    assert!(before.contains("By day 10 no tank is ready with any plan"));
    // the screen of the terminal is set in columns; a page has tables
    assert!(
        !html.contains("class=\"columns\""),
        "the screen is on the page"
    );
    is_sound(&text("sweep", "page.html"));
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

/// Said past the test's own catching of what is printed, so that nobody takes a skipped look for a passed one.
fn skipped<T>(why: &str) -> Option<T> {
    let words =
        format!("\nNOT LOOKED AT IN A BROWSER: {why}; only the text of the pages was checked\n");
    std::io::stderr().write_all(words.as_bytes()).unwrap();
    None
}

/// Looks at pages, each with its kind; SHOTS names a folder for pictures of them.
fn looked_at(pages: &[(&str, PathBuf)]) {
    let Some((browser, folder)) = browser() else {
        return;
    };
    let mut look = Process::new("node");
    look.arg(folder.join("pages.mjs")).arg(browser);
    look.args(
        pages
            .iter()
            .map(|(kind, page)| format!("{kind}={}", page.display())),
    );
    let seen = look.output().unwrap();
    let words = String::from_utf8_lossy(&seen.stdout).into_owned();
    let errors = String::from_utf8_lossy(&seen.stderr).into_owned();
    assert!(seen.status.success(), "\n{words}{errors}");
}

#[test]
fn every_lesson_works_in_a_browser_by_keyboard_touch_ear_and_on_paper() {
    let page = |lesson: &Lesson| lessons().join(lesson.key).join("lesson.html");
    let pages = LESSONS.iter().map(|lesson| ("lesson", page(lesson)));
    looked_at(&pages.collect::<Vec<_>>());
}

#[test]
fn the_pages_of_a_run_a_comparison_and_a_sweep_work_in_a_browser() {
    let page = |command: &str| ("report", reports().join(command).join("page.html"));
    looked_at(&["run", "compare", "sweep"].map(page));
}
