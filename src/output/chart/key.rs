//! The key under the sentence: a sample of each sign with its words.

use super::bands::{INNER, OUTER};
use super::figure::{Anchor, Shape, width_of};
use super::rect::Rect;
use super::sheet::{LEFT, Sheet, plain};
use super::signs::{cell, change_mark, corners, step_mark};
use super::style::{AMMONIA, Colour, INK, MUTED, Pen};

/// An entry of the key under the sentence.
#[derive(Debug, Clone, Copy)]
pub enum Key {
    /// A piece of line with words.
    Line(Pen, &'static str),
    /// A water change.
    Change,
    /// Another step of the plan.
    Step,
    /// A bar from lowest to highest.
    Bar(&'static str),
    /// The two bands of many plausible tanks.
    Bands(&'static str),
    /// One band of many plausible tanks.
    Band(&'static str),
    /// The field of the dark hours.
    Dark(Colour),
    /// A filled and an empty cell with their words.
    Cells(&'static str, &'static str),
}

impl Sheet {
    /// The key under the sentence.
    pub fn key(&mut self, entries: &[Key]) {
        let (mut x, y) = (LEFT, 98.0);
        for entry in entries {
            x = self.key_entry(*entry, x, y) + 26.0;
        }
    }
    fn key_entry(&mut self, entry: Key, x: f64, y: f64) -> f64 {
        let (wide, words) = match entry {
            Key::Line(pen, words) => {
                self.shape(Shape::Path(vec![(x, y), (x + 22.0, y)], pen));
                (22.0, words)
            }
            Key::Change => {
                self.shape(change_mark((x + 6.0, y + 5.0)));
                (12.0, "water change")
            }
            Key::Step => {
                self.shape(step_mark((x + 6.0, y)));
                (12.0, "other step of the plan")
            }
            Key::Bar(words) => {
                let pen = Pen::hair(INK).wide(3.0);
                self.shape(Shape::Path(
                    vec![(x + 5.0, y - 7.0), (x + 5.0, y + 7.0)],
                    pen,
                ));
                (10.0, words)
            }
            Key::Bands(words) => {
                for (half, alpha) in [(7.0, OUTER), (3.5, INNER)] {
                    let space = Rect::new(x, y - half, x + 26.0, y + half);
                    self.shape(Shape::Fill(corners(&space), INK, alpha));
                }
                (26.0, words)
            }
            Key::Band(words) => {
                let space = Rect::new(x, y - 7.0, x + 26.0, y + 7.0);
                self.shape(Shape::Fill(corners(&space), INK, OUTER));
                (26.0, words)
            }
            Key::Dark(colour) => {
                let space = Rect::new(x, y - 6.0, x + 22.0, y + 6.0);
                self.shape(Shape::Fill(corners(&space), colour, 1.0));
                (22.0, "lights off")
            }
            Key::Cells(filled, empty) => {
                let next = self.key_cell(true, filled, x, y) + 26.0;
                return self.key_cell(false, empty, next, y);
            }
        };
        self.key_words(words, x + wide + 8.0, y)
    }
    fn key_cell(&mut self, filled: bool, words: &str, x: f64, y: f64) -> f64 {
        let space = Rect::new(x, y - 6.0, x + 12.0, y + 6.0);
        for shape in cell(&space, AMMONIA, filled) {
            self.shape(shape);
        }
        self.key_words(words, x + 20.0, y)
    }
    fn key_words(&mut self, words: &str, x: f64, y: f64) -> f64 {
        let words = vec![plain(words, MUTED)];
        let end = x + width_of(&words);
        self.say(words, Anchor::Start, x, y + 4.5);
        end
    }
}
