//! The lessons, in the order in which a newcomer would ask.

mod air_at_night;
mod early_changes;
mod free_ammonia;
mod gas_timer;
mod nitrogen;
mod panels;
mod seeding;
mod soft_water;
mod starving;
mod test_reads_zero;
mod words;

use super::Lesson;

/// Every lesson.
pub static LESSONS: [Lesson; 9] = [
    early_changes::LESSON,
    test_reads_zero::LESSON,
    starving::LESSON,
    seeding::LESSON,
    free_ammonia::LESSON,
    soft_water::LESSON,
    gas_timer::LESSON,
    air_at_night::LESSON,
    nitrogen::LESSON,
];
