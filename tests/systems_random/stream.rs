//! Random choices from a seed, the same on every machine.

use rand::rngs::ChaCha8Rng;
use rand::{Rng, SeedableRng};

/// Fills the key beside seed and index, so that the stream is this generator's own.
const KEY_TAIL: &[u8; 16] = b"systems, v. 0001";

/// A stream of choices.
pub(crate) struct Stream(ChaCha8Rng);

impl Stream {
    /// The stream of one system: its place in the list of a seed.
    pub(crate) fn new(seed: u64, index: u64) -> Stream {
        let mut key = [0; 32];
        key[..8].copy_from_slice(&seed.to_le_bytes());
        key[8..16].copy_from_slice(&index.to_le_bytes());
        key[16..].copy_from_slice(KEY_TAIL);
        Stream(ChaCha8Rng::from_seed(key))
    }

    /// A whole number from 0 up to but not including `bound`; the high word of a product, whose
    /// lack of evenness is far below what a few thousand systems could show.
    pub(crate) fn below(&mut self, bound: u64) -> u64 {
        ((u128::from(self.0.next_u64()) * u128::from(bound)) >> 64) as u64
    }

    /// A whole number within a range, both ends included.
    pub(crate) fn between(&mut self, low: u64, high: u64) -> u64 {
        low + self.below(high - low + 1)
    }

    /// True that many times in a hundred.
    pub(crate) fn chance(&mut self, percent: u64) -> bool {
        self.below(100) < percent
    }

    /// The place of a choice, each as likely as its weight.
    pub(crate) fn weighted(&mut self, weights: &[u64]) -> usize {
        let mut left = self.below(weights.iter().sum());
        for (index, weight) in weights.iter().enumerate() {
            if left < *weight {
                return index;
            }
            left -= weight;
        }
        weights.len() - 1
    }
}
