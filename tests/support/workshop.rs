//! A room in which the program is started, disturbed and looked at from outside.

use std::collections::BTreeMap;
use std::fs;
use std::path::{Path, PathBuf};
use std::process::{Child, Command, Output, Stdio};

use tempfile::TempDir;

/// How the name of a draft begins.
pub const DRAFT: &str = ".firstfill-draft-";

/// An invented tank, three days long.
const TANK: &str = r#"
length = 3
[tank]
inside = "60 x 30 x 36 cm"
water_line = "33 cm"
[light]
on = "11:00..18:00"
[changes]
early = { days = "1..3", every = 1, share = "50 %" }
[plants]
stems = { cover = "40 %" }
"#;

/// The options of two runs that give different folders of the same names.
pub const HOURLY: [&str; 2] = ["--every", "1h"];
pub const TWICE_DAILY: [&str; 2] = ["--every", "12h"];

/// A folder as names and bytes.
pub type Folder = BTreeMap<String, Vec<u8>>;

/// A room with a scenario in it, and the program.
pub struct Workshop {
    pub room: TempDir,
    program: PathBuf,
}

impl Workshop {
    pub fn new() -> Workshop {
        let room = tempfile::tempdir().expect("a temporary folder");
        fs::write(room.path().join("tank.toml"), TANK).expect("a scenario");
        Workshop {
            room,
            program: assert_cmd::cargo::cargo_bin("firstfill"),
        }
    }

    /// The same room, but the program lies in it, where everybody may start it.
    pub fn with_its_own_program() -> Workshop {
        let mut shop = Workshop::new();
        let copy = shop.room.path().join("firstfill");
        // by another process: a child started meanwhile would inherit our handle on the copy, and
        // what somebody can write to cannot be started
        let copied = Command::new("cp").arg(&shop.program).arg(&copy).status();
        assert!(
            copied.is_ok_and(|status| status.success()),
            "a copy of the program"
        );
        shop.program = copy;
        shop
    }

    pub fn path(&self, name: &str) -> PathBuf {
        self.room.path().join(name)
    }

    /// `firstfill run tank.toml …`, not started yet.
    pub fn run(&self, options: &[&str]) -> Command {
        let mut command = Command::new(&self.program);
        command.args(["run", "tank.toml", "--single"]).args(options);
        command.current_dir(self.room.path());
        command
    }

    /// The same under a shell that says something first, such as a limit.
    pub fn run_after(&self, says: &str, options: &[&str]) -> Command {
        let mut command = Command::new("sh");
        command.args([
            "-c",
            &format!("{says}\nexec \"$0\" run tank.toml --single \"$@\""),
        ]);
        command.arg(&self.program).args(options);
        command.current_dir(self.room.path());
        command
    }

    /// A run without charts to a folder of its own, which must succeed.
    pub fn folder(&self, name: &str, options: &[&str]) -> Folder {
        let output = ended(self.run(&["--no-charts", "--out", name]).args(options));
        assert!(output.status.success(), "{}", words(&output));
        contents(&self.path(name))
    }

    /// The same with all charts.
    pub fn drawn(&self, name: &str, options: &[&str]) -> Folder {
        let output = ended(self.run(&["--out", name]).args(options));
        assert!(output.status.success(), "{}", words(&output));
        contents(&self.path(name))
    }

    /// Names in the room, drafts included.
    pub fn names(&self) -> Vec<String> {
        names(self.room.path())
    }
}

/// Starts a program whose words nobody reads before it ends.
pub fn started(command: &mut Command) -> Child {
    let piped = command.stdout(Stdio::piped()).stderr(Stdio::piped());
    piped.spawn().expect("the program")
}

/// Runs a program to its end.
pub fn ended(command: &mut Command) -> Output {
    command.output().expect("the program")
}

/// What a program said on standard error.
pub fn words(output: &Output) -> String {
    String::from_utf8_lossy(&output.stderr).into_owned()
}

/// Names in a folder, in order.
pub fn names(folder: &Path) -> Vec<String> {
    let entries = fs::read_dir(folder).into_iter().flatten().flatten();
    let mut names: Vec<String> = entries
        .map(|entry| entry.file_name().to_string_lossy().into_owned())
        .collect();
    names.sort();
    names
}

/// A folder as names and bytes.
pub fn contents(folder: &Path) -> Folder {
    let read = |name: String| {
        let bytes = fs::read(folder.join(&name)).expect("a file");
        (name, bytes)
    };
    names(folder).into_iter().map(read).collect()
}

/// Sends a signal to a program.
pub fn send(signal: &str, child: &Child) {
    let kill = format!("kill -{signal} {}", child.id());
    let sent = Command::new("sh").args(["-c", &kill]).output();
    // a program that has ended by itself meanwhile is no failure
    sent.expect("a shell");
}

/// Waits until something holds or a program has ended, whichever is first.
pub fn wait_until(child: &mut Child, mut holds: impl FnMut() -> bool) {
    while !holds() && child.try_wait().expect("a program").is_none() {
        std::thread::yield_now();
    }
}
