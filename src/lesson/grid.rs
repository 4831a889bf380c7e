//! A lesson's grid: every problem it can pose, each at a place that is a short list of numbers.

/// The choices of a lesson: its variants, and how many values each drawn quantity of a variant has.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Grid {
    variants: Vec<Vec<u32>>,
}

/// One place in a [`Grid`]: a variant, and for each of its drawn quantities which value.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct GridPlace {
    /// Which variant, counted from 0 in the order of the file.
    pub variant: usize,
    /// For each drawn quantity of the variant which of its values, counted from 0.
    pub indices: Vec<u32>,
}

impl Grid {
    /// The grid of variants with these numbers of choices; `None` if a quantity has no choice, if
    /// there is no variant, or if the grid has more than 2⁶⁴ places.
    pub(super) fn new(variants: Vec<Vec<u32>>) -> Option<Grid> {
        let grid = Grid { variants };
        let mut size: u64 = 0;
        for choices in &grid.variants {
            let places = choices
                .iter()
                .try_fold(1_u64, |product, &count| product.checked_mul(count.into()))?;
            if places == 0 {
                return None;
            }
            size = size.checked_add(places)?;
        }
        (size > 0).then_some(grid)
    }

    /// How many values each drawn quantity has, by variant.
    pub fn variants(&self) -> &[Vec<u32>] {
        &self.variants
    }

    /// How many places the grid has.
    pub fn size(&self) -> u128 {
        (0..self.variants.len())
            .map(|variant| self.variant_size(variant))
            .sum()
    }

    /// How many places one variant has; 0 for a variant that is not there.
    pub fn variant_size(&self, variant: usize) -> u128 {
        self.variants.get(variant).map_or(0, |choices| {
            choices.iter().map(|&count| u128::from(count)).product()
        })
    }

    /// True if the place lies in the grid.
    pub fn holds(&self, place: &GridPlace) -> bool {
        self.variants.get(place.variant).is_some_and(|choices| {
            choices.len() == place.indices.len()
                && choices
                    .iter()
                    .zip(&place.indices)
                    .all(|(count, index)| index < count)
        })
    }

    /// The number of a place, counted from 0: variants one after another, within a variant the
    /// last quantity changes fastest. `None` for a place outside the grid.
    pub fn number(&self, place: &GridPlace) -> Option<u128> {
        if !self.holds(place) {
            return None;
        }
        let before: u128 = (0..place.variant)
            .map(|variant| self.variant_size(variant))
            .sum();
        let within = self.variants[place.variant]
            .iter()
            .zip(&place.indices)
            .fold(0_u128, |number, (&count, &index)| {
                number * u128::from(count) + u128::from(index)
            });
        Some(before + within)
    }

    /// The place with this number; `None` beyond the end of the grid.
    pub fn place(&self, number: u128) -> Option<GridPlace> {
        let mut rest = number;
        for (variant, choices) in self.variants.iter().enumerate() {
            let size = self.variant_size(variant);
            if rest >= size {
                rest -= size;
                continue;
            }
            let mut indices = vec![0; choices.len()];
            for (index, &count) in indices.iter_mut().zip(choices).rev() {
                *index = (rest % u128::from(count)) as u32;
                rest /= u128::from(count);
            }
            return Some(GridPlace { variant, indices });
        }
        None
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn verif_numbers_and_places_are_one_to_one() {
        let grid = Grid::new(vec![vec![3, 2], vec![], vec![4]]).expect("a grid");
        assert_eq!(grid.size(), 11);
        for number in 0..11 {
            let place = grid.place(number).expect("inside");
            assert_eq!(grid.number(&place), Some(number));
        }
        assert_eq!(grid.place(11), None);
        assert_eq!(
            grid.place(3),
            Some(GridPlace {
                variant: 0,
                indices: vec![1, 1]
            })
        );
    }

    #[test]
    fn places_outside_have_no_number() {
        let grid = Grid::new(vec![vec![3, 2]]).expect("a grid");
        for (variant, indices) in [(0, vec![3, 0]), (1, vec![0, 0]), (0, vec![0])] {
            assert_eq!(grid.number(&GridPlace { variant, indices }), None);
        }
    }

    #[test]
    fn grids_beyond_counting_or_without_choice_are_refused() {
        assert_eq!(Grid::new(vec![vec![1000; 7]]), None);
        assert_eq!(Grid::new(vec![vec![2, 0]]), None);
        assert_eq!(Grid::new(Vec::new()), None);
    }
}
