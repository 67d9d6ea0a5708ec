//! The ways in which a file is spoiled, each a small slip of the hand or of the disk.

use rand::RngExt;
use rand::rngs::ChaCha8Rng;

use super::Corpus;

type Way = fn(&Corpus, &mut ChaCha8Rng, &[u8]) -> Vec<u8>;

/// Slips of somebody who writes a scenario.
const WRITING: [Way; 12] = [
    other_text,
    other_text,
    text_in_text,
    other_number,
    near_number,
    near_number,
    drop_line,
    double_line,
    swap_lines,
    borrow_line,
    new_line,
    wrap,
];
/// Slips that know nothing of the format.
const BYTES: [Way; 7] = [flip, put_word, take, cut, repeat, deepen, line_ends];

/// Some way, more often one of writing.
pub fn any(corpus: &Corpus, chance: &mut ChaCha8Rng, bytes: &[u8]) -> Vec<u8> {
    if chance.random_ratio(2, 3) {
        one_of(&WRITING, corpus, chance, bytes)
    } else {
        one_of(&BYTES, corpus, chance, bytes)
    }
}

/// Some way that keeps a word a word.
pub fn small(corpus: &Corpus, chance: &mut ChaCha8Rng, bytes: &[u8]) -> Vec<u8> {
    one_of(
        &[other_number, near_number, flip, put_word, take, cut, repeat],
        corpus,
        chance,
        bytes,
    )
}

fn one_of(ways: &[Way], corpus: &Corpus, chance: &mut ChaCha8Rng, bytes: &[u8]) -> Vec<u8> {
    ways[chance.random_range(0..ways.len())](corpus, chance, bytes)
}

/// Puts something in the place of a stretch.
fn put(bytes: &[u8], from: usize, to: usize, with: &[u8]) -> Vec<u8> {
    [&bytes[..from], with, &bytes[to..]].concat()
}

/// A place in a file, its end included.
fn place(chance: &mut ChaCha8Rng, bytes: &[u8]) -> usize {
    chance.random_range(0..=bytes.len())
}

/// Some stretch of bytes that all pass a test, if there is one.
fn stretch(
    chance: &mut ChaCha8Rng,
    bytes: &[u8],
    belongs: impl Fn(u8) -> bool,
) -> Option<(usize, usize)> {
    let starts: Vec<usize> = (0..bytes.len())
        .filter(|&at| belongs(bytes[at]) && (at == 0 || !belongs(bytes[at - 1])))
        .collect();
    if starts.is_empty() {
        return None;
    }
    let from = starts[chance.random_range(0..starts.len())];
    let length = bytes[from..].iter().position(|&b| !belongs(b));
    Some((from, length.map_or(bytes.len(), |length| from + length)))
}

/// The stretch between two quotation marks, if there is one.
fn quoted(chance: &mut ChaCha8Rng, bytes: &[u8]) -> Option<(usize, usize)> {
    let marks: Vec<usize> = (0..bytes.len()).filter(|&at| bytes[at] == b'"').collect();
    if marks.len() < 2 {
        return None;
    }
    let pair = chance.random_range(0..marks.len() / 2);
    Some((marks[2 * pair] + 1, marks[2 * pair + 1]))
}

/// Another text between two quotation marks.
fn other_text(corpus: &Corpus, chance: &mut ChaCha8Rng, bytes: &[u8]) -> Vec<u8> {
    match quoted(chance, bytes) {
        Some((from, to)) => put(bytes, from, to, corpus.word(chance).as_bytes()),
        None => bytes.to_vec(),
    }
}

/// A word inside a text, more often at one of its ends than anywhere else.
fn text_in_text(corpus: &Corpus, chance: &mut ChaCha8Rng, bytes: &[u8]) -> Vec<u8> {
    let Some((from, to)) = quoted(chance, bytes) else {
        return bytes.to_vec();
    };
    let places = [from, to, chance.random_range(from..=to)];
    let at = places[chance.random_range(0..places.len())];
    put(bytes, at, at, corpus.word(chance).as_bytes())
}

fn other_number(corpus: &Corpus, chance: &mut ChaCha8Rng, bytes: &[u8]) -> Vec<u8> {
    match stretch(chance, bytes, |b| b.is_ascii_digit() || b == b'.') {
        Some((from, to)) => put(bytes, from, to, corpus.word(chance).as_bytes()),
        None => bytes.to_vec(),
    }
}

/// A number of the same kind as before, which is often still valid.
fn near_number(_: &Corpus, chance: &mut ChaCha8Rng, bytes: &[u8]) -> Vec<u8> {
    let Some((from, to)) = stretch(chance, bytes, |b| b.is_ascii_digit()) else {
        return bytes.to_vec();
    };
    let most = 10_u64.pow((to - from).min(5) as u32);
    let number = chance.random_range(0..most);
    put(bytes, from, to, number.to_string().as_bytes())
}

fn lines(bytes: &[u8]) -> Vec<&[u8]> {
    bytes.split_inclusive(|&b| b == b'\n').collect()
}

fn drop_line(_: &Corpus, chance: &mut ChaCha8Rng, bytes: &[u8]) -> Vec<u8> {
    let mut lines = lines(bytes);
    if !lines.is_empty() {
        lines.remove(chance.random_range(0..lines.len()));
    }
    lines.concat()
}

fn double_line(_: &Corpus, chance: &mut ChaCha8Rng, bytes: &[u8]) -> Vec<u8> {
    let mut lines = lines(bytes);
    if !lines.is_empty() {
        let line = lines[chance.random_range(0..lines.len())];
        lines.insert(chance.random_range(0..=lines.len()), line);
    }
    lines.concat()
}

fn swap_lines(_: &Corpus, chance: &mut ChaCha8Rng, bytes: &[u8]) -> Vec<u8> {
    let mut lines = lines(bytes);
    if !lines.is_empty() {
        let (a, b) = (
            chance.random_range(0..lines.len()),
            chance.random_range(0..lines.len()),
        );
        lines.swap(a, b);
    }
    lines.concat()
}

/// A line of another file at some place.
fn borrow_line(corpus: &Corpus, chance: &mut ChaCha8Rng, bytes: &[u8]) -> Vec<u8> {
    let (_, other) = corpus.file(chance);
    let other = lines(other.as_bytes());
    let line = other[chance.random_range(0..other.len())];
    let mut lines = lines(bytes);
    lines.insert(chance.random_range(0..=lines.len()), line);
    lines.concat()
}

/// A documented key, valid as such, at the top of the file.
fn new_line(corpus: &Corpus, chance: &mut ChaCha8Rng, bytes: &[u8]) -> Vec<u8> {
    [corpus.line(chance).as_bytes(), b"\n", bytes].concat()
}

/// A value inside brackets inside brackets.
fn wrap(_: &Corpus, chance: &mut ChaCha8Rng, bytes: &[u8]) -> Vec<u8> {
    let Some((from, to)) = stretch(chance, bytes, |b| !b"=\n#".contains(&b)) else {
        return bytes.to_vec();
    };
    let times = [1, 2, 70, 200, 5000][chance.random_range(0..5)];
    let (open, close) = [("[", "]"), ("{a=", "}")][chance.random_range(0..2)];
    let (open, close) = (open.repeat(times), close.repeat(times));
    let wrapped = [open.as_bytes(), &bytes[from..to], close.as_bytes()].concat();
    put(bytes, from, to, &wrapped)
}

fn flip(_: &Corpus, chance: &mut ChaCha8Rng, bytes: &[u8]) -> Vec<u8> {
    let mut bytes = bytes.to_vec();
    if !bytes.is_empty() {
        let at = chance.random_range(0..bytes.len());
        bytes[at] ^= 1 << chance.random_range(0..8);
    }
    bytes
}

fn put_word(corpus: &Corpus, chance: &mut ChaCha8Rng, bytes: &[u8]) -> Vec<u8> {
    let at = place(chance, bytes);
    put(bytes, at, at, corpus.word(chance).as_bytes())
}

fn take(_: &Corpus, chance: &mut ChaCha8Rng, bytes: &[u8]) -> Vec<u8> {
    let from = place(chance, bytes);
    let to = (from + chance.random_range(1..40)).min(bytes.len());
    put(bytes, from, to, b"")
}

fn cut(_: &Corpus, chance: &mut ChaCha8Rng, bytes: &[u8]) -> Vec<u8> {
    bytes[..place(chance, bytes)].to_vec()
}

/// A stretch many times over.
fn repeat(_: &Corpus, chance: &mut ChaCha8Rng, bytes: &[u8]) -> Vec<u8> {
    let from = place(chance, bytes);
    let to = (from + chance.random_range(1..40)).min(bytes.len());
    let times = [2, 10, 300][chance.random_range(0..3)];
    put(bytes, from, to, &bytes[from..to].repeat(times))
}

/// A key inside a key inside a key.
fn deepen(_: &Corpus, chance: &mut ChaCha8Rng, bytes: &[u8]) -> Vec<u8> {
    let Some((from, to)) = stretch(chance, bytes, |b| b.is_ascii_lowercase() || b == b'_') else {
        return bytes.to_vec();
    };
    let times = [1, 60, 5000][chance.random_range(0..3)];
    let deep = [&bytes[from..to], b"."].concat().repeat(times);
    put(bytes, from, from, &deep)
}

/// Line ends of another system, or a mark before the text.
fn line_ends(_: &Corpus, chance: &mut ChaCha8Rng, bytes: &[u8]) -> Vec<u8> {
    let ends: [&[u8]; 3] = [b"\r\n", b"\r", b"\n\r"];
    let end = ends[chance.random_range(0..3)];
    let lines: Vec<&[u8]> = bytes.split(|&b| b == b'\n').collect();
    let other = lines.join(end);
    let mark: &[u8] = if chance.random_ratio(1, 2) {
        "\u{feff}".as_bytes()
    } else {
        b""
    };
    [mark, &other].concat()
}
