//! A wish to stop: raised once from outside, looked at by long work between two pieces of it.

use std::sync::Arc;
use std::sync::atomic::{AtomicBool, Ordering};

/// A wish to stop. Copies share it, so that many workers can look at one.
#[derive(Debug, Clone, Default)]
pub struct Stop(Arc<AtomicBool>);

/// The work was stopped before it was done.
#[derive(Debug, Clone, Copy, PartialEq, Eq, thiserror::Error)]
#[error("stopped")]
pub struct Stopped;

impl Stop {
    /// Wishes it; says whether it had been wished before.
    pub fn ask(&self) -> bool {
        self.0.swap(true, Ordering::Relaxed)
    }
    /// Goes on, unless it is time to stop. Work calls it with `?` where it can be left off.
    ///
    /// # Errors
    /// When somebody wishes to stop.
    pub fn check(&self) -> Result<(), Stopped> {
        if self.0.load(Ordering::Relaxed) {
            return Err(Stopped);
        }
        Ok(())
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_wish_reaches_every_copy_and_the_second_wish_is_known_as_such() {
        let stop = Stop::default();
        let worker = stop.clone();
        assert_eq!(worker.check(), Ok(()));
        assert!(!stop.ask());
        assert_eq!(worker.check(), Err(Stopped));
        assert!(stop.ask());
    }
}
