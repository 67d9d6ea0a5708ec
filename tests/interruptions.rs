//! Whatever happens to a run on its way, its folder is there whole or not at all, an earlier result
//! is what it was or replaced whole, and people are told what to do.
#![cfg(unix)]

#[path = "support/heeding.rs"]
mod heeding;
#[path = "support/workshop.rs"]
mod workshop;

use std::fs;
use std::os::unix::fs::PermissionsExt;
use std::os::unix::process::CommandExt;
use std::process::{Command, Output, Stdio};
use std::time::Duration;

use rand::rngs::ChaCha8Rng;
use rand::{RngExt, SeedableRng};

use heeding::heeding;
use workshop::{
    DRAFT, HOURLY, TWICE_DAILY, Workshop, contents, ended, send, started, wait_until, words,
};

/// Files of a run without charts.
const FILES: usize = 7;

#[test]
fn killed_at_any_moment_the_earlier_result_is_whole_or_replaced_whole() {
    let shop = Workshop::new();
    let old = shop.folder("mine", &HOURLY);
    let new = shop.folder("new", &TWICE_DAILY);
    let drawn = shop.drawn("drawn", &TWICE_DAILY);
    let chance = &mut ChaCha8Rng::seed_from_u64(3);
    let mut drafts_seen = 0;
    for turn in 0..36 {
        // charts keep a draft open for a tenth of a second, so that a busy machine hits it too
        let charts = turn % 3 == 2;
        let options: &[&str] = if charts { &[] } else { &["--no-charts"] };
        let mut child = started(
            shop.run(&["--out", "mine", "--force"])
                .args(options)
                .args(TWICE_DAILY),
        );
        if turn % 3 == 0 {
            std::thread::sleep(Duration::from_millis(chance.random_range(0..60)));
        } else if charts {
            wait_until(&mut child, || draft_holds(&shop, 0));
            std::thread::sleep(Duration::from_millis(chance.random_range(0..40)));
        } else {
            let files = [0, 3, 6, FILES, FILES, FILES][chance.random_range(0..6)];
            wait_until(&mut child, || draft_holds(&shop, files));
            // a draft that is complete gets its name within the next millisecond
            std::thread::sleep(Duration::from_micros(chance.random_range(0..1000)));
        }
        child.kill().expect("it is ours");
        child.wait().expect("it has ended");
        let found = contents(&shop.path("mine"));
        assert!(
            found == old || found == new || found == drawn,
            "turn {turn}: {:?}",
            found.keys()
        );
        let mut names = shop.names();
        names.retain(|name| !name.starts_with(DRAFT));
        assert_eq!(names, ["drawn", "mine", "new", "tank.toml"], "turn {turn}");
        drafts_seen += shop.names().len() - names.len();
        if found != old {
            shop.folder("mine", &["--force", HOURLY[0], HOURLY[1]]);
        }
    }
    // else no kill has hit a run while it wrote, and nothing has been tried
    assert!(drafts_seen > 0);
    shop.folder("mine", &["--force", TWICE_DAILY[0], TWICE_DAILY[1]]);
    assert_eq!(
        shop.names(),
        ["drawn", "mine", "new", "tank.toml"],
        "the rests are cleared away"
    );
}

/// Whether a draft holds this many files, or more.
fn draft_holds(shop: &Workshop, files: usize) -> bool {
    let drafts = shop
        .names()
        .into_iter()
        .filter(|name| name.starts_with(DRAFT));
    drafts
        .map(|name| shop.path(&name).join("out"))
        .any(|out| out.is_dir() && workshop::names(&out).len() >= files)
}

#[test]
fn ctrl_c_and_a_request_to_end_leave_nothing_and_end_with_130() {
    for signal in ["INT", "TERM", "HUP"] {
        let (shop, output) = stopped_by(signal, &["--out", "deep/mine"], |_| {});
        assert_eq!(words(&output), "stopped; nothing written\n", "{signal}");
        assert_eq!(output.status.code(), Some(130), "{signal}");
        assert!(output.stdout.is_empty(), "{signal}");
        assert_eq!(shop.names(), ["tank.toml"], "{signal}");
    }
}

#[test]
fn ctrl_c_during_a_replacement_leaves_the_earlier_result_as_it_was() {
    let mut old = None;
    let options = ["--out", "mine", "--force"];
    let (shop, output) = stopped_by("INT", &options, |shop| {
        old = Some(shop.folder("mine", &HOURLY))
    });
    assert_eq!(output.status.code(), Some(130), "{}", words(&output));
    assert_eq!(Some(contents(&shop.path("mine"))), old);
    assert_eq!(shop.names(), ["mine", "tank.toml"]);
}

/// Sends a signal to a run with charts that has opened its draft. On a machine that is so busy that
/// the run ends before the signal comes, it is tried again in another room.
fn stopped_by(
    signal: &str,
    options: &[&str],
    mut prepare: impl FnMut(&Workshop),
) -> (Workshop, Output) {
    for _ in 0..10 {
        let shop = Workshop::new();
        prepare(&shop);
        let mut child = started(&mut heeding(&shop.run(options)));
        wait_until(&mut child, || {
            draft_holds(&shop, 0) || shop.path("deep").is_dir()
        });
        send(signal, &child);
        let output = child.wait_with_output().expect("it has ended");
        if !output.status.success() {
            return (shop, output);
        }
    }
    panic!("ten runs were faster than a signal");
}

#[test]
fn a_second_ctrl_c_does_not_wait() {
    // the run may heed the first before the second comes; then it is tried again
    let at_once = |said: String| said.starts_with("stopped at once; the next run clears away");
    assert!((0..10).any(|_| at_once(stopped_again_and_again())));
}

/// What a run says that is sent one Ctrl-C after the other; it leaves no result in any case.
fn stopped_again_and_again() -> String {
    let shop = Workshop::new();
    let mut child = started(&mut heeding(&shop.run(&["--out", "mine"])));
    wait_until(&mut child, || draft_holds(&shop, 0));
    while child.try_wait().expect("a program").is_none() {
        send("INT", &child);
    }
    let output = child.wait_with_output().expect("it has ended");
    assert_eq!(output.status.code(), Some(130), "{}", words(&output));
    assert!(!shop.path("mine").exists());
    words(&output)
}

#[test]
fn what_is_ignored_on_purpose_does_not_end_a_run() {
    let shop = Workshop::new();
    let run = &mut shop.run_after("trap '' HUP", &["--out", "mine", "--no-charts"]);
    let mut child = started(run);
    wait_until(&mut child, || draft_holds(&shop, 0));
    send("HUP", &child);
    let output = child.wait_with_output().expect("it has ended");
    assert!(output.status.success(), "{}", words(&output));
    assert_eq!(contents(&shop.path("mine")).len(), FILES);
}

#[test]
fn a_disk_that_fills_up_is_said_and_nothing_is_lost() {
    let shop = Workshop::new();
    let old = shop.folder("mine", &HOURLY);
    // no file may grow beyond 4 blocks; the signal that says so is ignored, so that writing fails
    let limit = "trap '' XFSZ; ulimit -f 4";
    for options in [
        &["--out", "mine", "--force"],
        &["--out", "deep/other", "--no-charts"],
    ] {
        let output = ended(&mut shop.run_after(limit, options));
        assert_eq!(output.status.code(), Some(2), "{}", words(&output));
        let place = if options[1] == "mine" { "." } else { "deep" };
        assert_eq!(
            words(&output),
            format!(
                "error: cannot write to {place}: files may not grow so large there; nothing was written; \
                 make room, leave the charts out with --no-charts, or name a folder on another disk \
                 with --out\n"
            )
        );
        assert_eq!(contents(&shop.path("mine")), old);
        assert_eq!(shop.names(), ["mine", "tank.toml"]);
    }
}

#[test]
fn a_small_disk_that_is_full_is_said_and_nothing_is_lost() {
    let shop = Workshop::new();
    fs::create_dir(shop.path("disk")).unwrap();
    let says = "mount -t tmpfs -o size=64k small disk && \"$0\" run tank.toml --out disk/mine; echo $?; ls -A disk";
    let script = Command::new("unshare")
        .args(["--user", "--map-root-user", "--mount", "sh", "-c", says])
        .arg(assert_cmd::cargo::cargo_bin("firstfill"))
        .current_dir(shop.room.path())
        .output();
    let Some(output) = script
        .ok()
        .filter(|output| !words(output).contains("unshare:"))
    else {
        println!("this system lets nobody make a small disk; the test before has to do");
        return;
    };
    let said = words(&output);
    assert!(
        said.contains("cannot write to disk: the disk is full; nothing was written"),
        "{said}"
    );
    assert_eq!(output.stdout, b"2\n", "the exit code, and an empty disk");
}

#[test]
fn a_place_that_may_not_be_written_to_is_said_and_nothing_is_lost() {
    let shop = Workshop::with_its_own_program();
    let old = shop.folder("mine", &HOURLY);
    fs::set_permissions(shop.room.path(), fs::Permissions::from_mode(0o555)).unwrap();
    for options in [
        &["--no-charts", "--out", "mine", "--force"][..],
        &["--no-charts", "--out", "other"],
        &["--no-charts", "--out", "deep/other"],
        &["--no-charts"],
    ] {
        let mut run = shop.run(options);
        if rustix::process::geteuid().is_root() {
            run.uid(NOBODY).gid(NOBODY); // nothing is forbidden to root
        }
        let output = ended(&mut run);
        assert_eq!(
            output.status.code(),
            Some(2),
            "{options:?}: {}",
            words(&output)
        );
        let tail = ": permission is denied; check that the folder exists and is yours, or name another with --out\n";
        assert!(
            words(&output).starts_with("error: cannot write to "),
            "{}",
            words(&output)
        );
        assert!(words(&output).ends_with(tail), "{}", words(&output));
    }
    fs::set_permissions(shop.room.path(), fs::Permissions::from_mode(0o755)).unwrap();
    assert_eq!(contents(&shop.path("mine")), old);
    assert_eq!(shop.names(), ["firstfill", "mine", "tank.toml"]);
}

/// The user without rights, by custom.
const NOBODY: u32 = 65534;

#[test]
fn runs_that_want_one_new_folder_at_once_leave_one_winner() {
    let shop = Workshop::new();
    let expected = shop.folder("alone", &[]);
    let runs: Vec<_> = (0..6)
        .map(|_| started(&mut shop.run(&["--no-charts", "--out", "mine"])))
        .collect();
    let mut won = 0;
    for run in runs {
        let output = run.wait_with_output().unwrap();
        match output.status.code() {
            Some(0) => won += 1,
            Some(2) => assert!(
                words(&output).starts_with("error: mine is already there"),
                "{}",
                words(&output)
            ),
            _ => panic!("{output:?}"),
        }
    }
    assert_eq!(won, 1);
    assert_eq!(contents(&shop.path("mine")), expected);
    assert_eq!(shop.names(), ["alone", "mine", "tank.toml"]);
}

#[test]
fn runs_that_take_the_next_free_name_at_once_all_get_one() {
    let shop = Workshop::new();
    let expected = shop.folder("alone", &[]);
    let runs: Vec<_> = (0..6)
        .map(|_| started(&mut shop.run(&["--no-charts"])))
        .collect();
    for run in runs {
        let output = run.wait_with_output().unwrap();
        assert!(output.status.success(), "{}", words(&output));
    }
    let names = workshop::names(&shop.path("output"));
    assert_eq!(
        names,
        ["tank", "tank-2", "tank-3", "tank-4", "tank-5", "tank-6"]
    );
    for name in names {
        assert!(contents(&shop.path("output").join(name)) == expected);
    }
}

#[test]
fn runs_that_replace_one_folder_at_once_leave_one_of_them_whole() {
    let shop = Workshop::new();
    let (hourly, twice_daily) = (
        shop.folder("mine", &HOURLY),
        shop.folder("new", &TWICE_DAILY),
    );
    let replace = ["--no-charts", "--out", "mine", "--force"];
    let runs: Vec<_> = [
        HOURLY,
        TWICE_DAILY,
        HOURLY,
        TWICE_DAILY,
        HOURLY,
        TWICE_DAILY,
    ]
    .iter()
    .map(|every| started(shop.run(&replace).args(every)))
    .collect();
    for run in runs {
        let output = run.wait_with_output().unwrap();
        assert!(output.status.success(), "{}", words(&output));
    }
    let found = contents(&shop.path("mine"));
    assert!(
        found == hourly || found == twice_daily,
        "{:?}",
        found.keys()
    );
    assert_eq!(shop.names(), ["mine", "new", "tank.toml"]);
}

#[test]
fn a_report_that_cannot_be_printed_does_not_lose_the_results() {
    let shop = Workshop::new();
    let Ok(full) = fs::OpenOptions::new().write(true).open("/dev/full") else {
        return; // not every system has one
    };
    let mut run = shop.run(&["--no-charts", "--out", "mine"]);
    let output = run.stdout(full).stderr(Stdio::piped()).output().unwrap();
    assert_eq!(output.status.code(), Some(2));
    let said = words(&output);
    assert!(
        said.starts_with("error: cannot write to standard output: "),
        "{said}"
    );
    assert!(said.ends_with("; the results are in mine\n"), "{said}");
    assert_eq!(contents(&shop.path("mine")).len(), FILES);
}

#[test]
fn a_reader_that_has_seen_enough_is_no_error() {
    let shop = Workshop::new();
    let mut child = started(&mut shop.run(&["--no-charts", "--out", "mine"]));
    drop(child.stdout.take());
    let output = child.wait_with_output().unwrap();
    assert!(
        output.status.success() && output.stderr.is_empty(),
        "{output:?}"
    );
    assert_eq!(contents(&shop.path("mine")).len(), FILES);
}
