//! Where along a row of trials the answer turns.

/// The first of `0..count` for which `holds` is true, if it is false up to somewhere and true from there on;
/// `count` when it is true nowhere. Asks about log₂(count) times.
///
/// # Errors
/// The first of `holds`.
pub fn first_that_holds<E>(
    count: u32,
    mut holds: impl FnMut(u32) -> Result<bool, E>,
) -> Result<u32, E> {
    let (mut from, mut until) = (0, count);
    while from < until {
        let middle = from + (until - from) / 2;
        match holds(middle)? {
            true => until = middle,
            false => from = middle + 1,
        }
    }
    Ok(from)
}

/// How many trials [`first_that_holds`] asks for at most.
pub fn most_trials(count: u32) -> usize {
    (u32::BITS - count.leading_zeros()) as usize
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_turn_is_found_wherever_it_is_with_as_few_trials_as_promised() {
        for count in 0..40 {
            for turn in 0..=count {
                let mut trials = 0;
                let found = first_that_holds(count, |at| {
                    trials += 1;
                    Ok::<bool, ()>(at >= turn)
                });
                assert_eq!(found, Ok(turn));
                assert!(trials <= most_trials(count), "{count} {turn}: {trials}");
            }
        }
    }
}
