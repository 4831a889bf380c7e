//! The stream of places that a seed gives.
//!
//! Everything here is frozen: the generator (ChaCha with 8 rounds, a named portable stream), how
//! the seed is laid into its key, the order of the draws and the way to draw below a bound. The
//! golden test fails when any of it changes.

use crate::lesson::{GridPlace, Lesson};
use rand::rngs::ChaCha8Rng;
use rand::{Rng, SeedableRng};

/// Fills the key beside the seed, so that the stream is this program's own.
const KEY_TAIL: &[u8; 24] = b"leverwright, draws, v. 1";

/// An endless stream of places in a lesson's grid; places may come again.
#[derive(Debug)]
pub struct Candidates<'l> {
    lesson: &'l Lesson,
    stream: ChaCha8Rng,
}

/// The places that this seed gives, one after another: every variant is equally likely, and so is
/// every value of a quantity. The same seed gives the same places on every machine.
pub fn candidates(lesson: &Lesson, seed: u64) -> Candidates<'_> {
    let mut key = [0; 32];
    key[..8].copy_from_slice(&seed.to_le_bytes());
    key[8..].copy_from_slice(KEY_TAIL);
    Candidates {
        lesson,
        stream: ChaCha8Rng::from_seed(key),
    }
}

impl Iterator for Candidates<'_> {
    type Item = GridPlace;

    fn next(&mut self) -> Option<GridPlace> {
        let variants = self.lesson.grid().variants();
        let variant = below(&mut self.stream, variants.len() as u64) as usize;
        let indices = variants
            .get(variant)?
            .iter()
            .map(|&count| below(&mut self.stream, count.into()) as u32)
            .collect();
        Some(GridPlace { variant, indices })
    }
}

/// A whole number from 0 up to but not including `bound`, each equally likely; 0 for a bound of 0.
///
/// Multiply, keep the high word, and reject the few low words that would be drawn too often:
/// D. Lemire, "Fast Random Integer Generation in an Interval", ACM TOMACS 29 (2019), algorithm 5
/// (from memory).
fn below(stream: &mut impl Rng, bound: u64) -> u64 {
    if bound == 0 {
        return 0;
    }
    let reject_below = bound.wrapping_neg() % bound;
    loop {
        let product = u128::from(stream.next_u64()) * u128::from(bound);
        if product as u64 >= reject_below {
            return (product >> 64) as u64;
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn verif_every_value_below_the_bound_comes_equally_often() {
        let mut stream = ChaCha8Rng::from_seed([7; 32]);
        let mut counts = [0_u32; 6];
        for _ in 0..60_000 {
            counts[below(&mut stream, 6) as usize] += 1;
        }
        // Five standard deviations of a count are 456.
        assert!(
            counts.iter().all(|count| count.abs_diff(10_000) < 457),
            "{counts:?}"
        );
    }

    #[test]
    fn bounds_of_nothing_and_one_are_answered() {
        let mut stream = ChaCha8Rng::from_seed([7; 32]);
        assert_eq!(below(&mut stream, 0), 0);
        assert_eq!(below(&mut stream, 1), 0);
    }
}
