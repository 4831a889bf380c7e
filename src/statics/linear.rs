//! Elimination with complete pivoting on a small dense matrix: rank, null space, solution.
//!
//! The matrix comes in already scaled (`balance` divides forces by a force scale and moments by
//! a force times a length), so a pivot is a pure number that can be held against a threshold.
//! Rows are not scaled by their own largest entry on top of that: a row that holds nothing but
//! rounding dust would become a row that counts.

/// A matrix, row by row. Every row has as many entries as there are columns.
pub(super) type Rows = Vec<Vec<f64>>;

/// A pivot smaller than this part of the largest one is zero: what is left is rounding.
pub(super) const ZERO_PIVOT: f64 = 1e-11;

/// What elimination found.
#[derive(Clone, Debug)]
pub(super) struct Elimination {
    /// Row and column of each pivot that is not zero, in the order in which they were taken.
    pivots: Vec<(usize, usize)>,
    /// The matrix after Gauss and Jordan, the right-hand side as its last column.
    reduced: Rows,
    columns: usize,
    /// Smallest pivot that is not zero, as a part of the largest; 1 where there is none.
    pub(super) smallest: f64,
}

/// Eliminates `rows` with `right` as right-hand side, largest remaining entry first.
pub(super) fn eliminate(rows: &Rows, right: &[f64], columns: usize) -> Elimination {
    let mut reduced: Rows = rows
        .iter()
        .zip(right)
        .map(|(row, value)| row.iter().copied().chain([*value]).collect())
        .collect();
    let mut pivots: Vec<(usize, usize)> = Vec::new();
    let mut largest = 0.0;
    let mut smallest = 1.0;
    while let Some((row, column)) = largest_entry(&reduced, columns, &pivots) {
        let size = reduced[row][column].abs();
        if pivots.is_empty() {
            largest = size;
        }
        if size <= ZERO_PIVOT * largest {
            break;
        }
        smallest = size / largest;
        clear_column(&mut reduced, row, column);
        pivots.push((row, column));
    }
    Elimination {
        pivots,
        reduced,
        columns,
        smallest,
    }
}

/// The largest entry outside the rows and columns that already have a pivot.
fn largest_entry(rows: &Rows, columns: usize, taken: &[(usize, usize)]) -> Option<(usize, usize)> {
    let mut best: Option<(usize, usize)> = None;
    let mut size = 0.0;
    for (index, row) in rows.iter().enumerate() {
        if taken.iter().any(|pivot| pivot.0 == index) {
            continue;
        }
        for (column, entry) in row.iter().enumerate().take(columns) {
            if entry.abs() > size && taken.iter().all(|pivot| pivot.1 != column) {
                size = entry.abs();
                best = Some((index, column));
            }
        }
    }
    best
}

/// Makes the pivot 1 and every other entry of its column 0.
fn clear_column(rows: &mut Rows, row: usize, column: usize) {
    let pivot = rows[row][column];
    for entry in &mut rows[row] {
        *entry /= pivot;
    }
    rows[row][column] = 1.0;
    let pivot_row = rows[row].clone();
    for (index, other) in rows.iter_mut().enumerate() {
        let factor = other[column];
        if index == row || factor == 0.0 {
            continue;
        }
        for (entry, above) in other.iter_mut().zip(&pivot_row) {
            *entry -= factor * above;
        }
        other[column] = 0.0;
    }
}

impl Elimination {
    /// Number of independent equations.
    pub(super) fn rank(&self) -> usize {
        self.pivots.len()
    }

    /// A solution, with 0 for every unknown that the equations leave free. Whether it solves the
    /// rows without a pivot is for the caller to see.
    pub(super) fn solution(&self) -> Vec<f64> {
        let mut values = vec![0.0; self.columns];
        for &(row, column) in &self.pivots {
            values[column] = self.reduced[row][self.columns];
        }
        values
    }

    /// A basis of what may be added to a solution without changing any equation.
    pub(super) fn null_space(&self) -> Vec<Vec<f64>> {
        let is_free = |column: &usize| self.pivots.iter().all(|pivot| pivot.1 != *column);
        (0..self.columns)
            .filter(is_free)
            .map(|free| {
                let mut vector = vec![0.0; self.columns];
                vector[free] = 1.0;
                for &(row, column) in &self.pivots {
                    vector[column] = -self.reduced[row][free];
                }
                vector
            })
            .collect()
    }
}

/// An orthonormal basis of everything that is at right angles to all columns of `rows`.
pub(super) fn left_null_space(rows: &Rows, columns: usize) -> Vec<Vec<f64>> {
    let turned: Rows = (0..columns)
        .map(|column| rows.iter().map(|row| row[column]).collect())
        .collect();
    let basis = eliminate(&turned, &vec![0.0; columns], rows.len()).null_space();
    let mut normal: Vec<Vec<f64>> = Vec::new();
    for mut vector in basis {
        // Twice, since once leaves rounding behind.
        for _ in 0..2 {
            for earlier in &normal {
                let share = dot(&vector, earlier);
                add(&mut vector, earlier, -share);
            }
        }
        let size = libm::sqrt(dot(&vector, &vector));
        if size > ZERO_PIVOT {
            vector.iter_mut().for_each(|entry| *entry /= size);
            normal.push(vector);
        }
    }
    normal
}

/// Sum of the products of entries.
pub(super) fn dot(one: &[f64], other: &[f64]) -> f64 {
    one.iter().zip(other).map(|(a, b)| a * b).sum()
}

/// Adds `factor` times `other` to `vector`.
pub(super) fn add(vector: &mut [f64], other: &[f64], factor: f64) {
    for (entry, by) in vector.iter_mut().zip(other) {
        *entry += factor * by;
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_regular_system_is_solved() {
        let rows = vec![vec![0.0, 2.0], vec![3.0, 1.0]];
        let found = eliminate(&rows, &[4.0, 5.0], 2);
        assert_eq!(found.rank(), 2);
        assert_eq!(found.solution(), [1.0, 2.0]);
        assert!(found.null_space().is_empty());
        assert!(left_null_space(&rows, 2).is_empty());
    }

    #[test]
    fn a_wide_system_has_a_null_space_that_solves_it() {
        let rows = vec![vec![1.0, 2.0, 3.0], vec![2.0, 4.0, 6.5]];
        let found = eliminate(&rows, &[1.0, 2.0], 3);
        assert_eq!(found.rank(), 2);
        let free = &found.null_space()[0];
        for row in &rows {
            assert!(dot(row, free).abs() < 1e-14);
        }
        assert!(dot(free, free) > 0.5);
    }

    #[test]
    fn a_tall_system_names_what_no_column_can_balance() {
        let rows = vec![vec![1.0, 1.0], vec![1.0, 1.0], vec![0.0, 0.0]];
        assert_eq!(eliminate(&rows, &[0.0; 3], 2).rank(), 1);
        let left = left_null_space(&rows, 2);
        assert_eq!(left.len(), 2);
        for vector in &left {
            assert!((vector[0] + vector[1]).abs() < 1e-14);
            assert!((dot(vector, vector) - 1.0).abs() < 1e-14);
        }
        assert!(dot(&left[0], &left[1]).abs() < 1e-14);
    }

    #[test]
    fn rounding_dust_is_no_pivot() {
        let rows = vec![vec![1.0, 1.0], vec![1e-16, 2e-16]];
        assert_eq!(eliminate(&rows, &[1.0, 0.0], 2).rank(), 1);
    }

    #[test]
    fn an_empty_system_has_rank_zero() {
        assert_eq!(eliminate(&Vec::new(), &[], 0).rank(), 0);
        assert_eq!(left_null_space(&vec![Vec::new(), Vec::new()], 0).len(), 2);
    }
}
