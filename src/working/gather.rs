//! Equal terms of a sum gathered: L·sin θ + L·sin θ is 2·L·sin θ.

use super::Expression;
use super::place::Signed;
use crate::key::Formula;

/// A fraction of whole numbers before a term.
#[derive(Clone, Copy, Debug, PartialEq)]
struct Share {
    over: f64,
    under: f64,
}

impl Share {
    const ONE: Share = Share {
        over: 1.0,
        under: 1.0,
    };

    fn times(self, other: Share) -> Share {
        Share {
            over: self.over * other.over,
            under: self.under * other.under,
        }
        .shortened()
    }

    fn plus(self, other: Share) -> Share {
        Share {
            over: self.over * other.under + other.over * self.under,
            under: self.under * other.under,
        }
        .shortened()
    }

    fn shortened(self) -> Share {
        let (mut one, mut other) = (self.over.abs(), self.under);
        while other > 0.0 {
            (one, other) = (other, one % other);
        }
        if one == 0.0 {
            return self;
        }
        Share {
            over: self.over / one,
            under: self.under / one,
        }
    }
}

/// True for whole numbers that are counted exactly.
fn is_whole(number: f64) -> bool {
    number.fract() == 0.0 && number.abs() < 1e6 && number != 0.0
}

/// A term taken apart into its fraction and what it is a fraction of.
fn apart(term: &Expression) -> (Share, Expression) {
    match term {
        Formula::Number(number) if is_whole(*number) => (
            Share {
                over: *number,
                under: 1.0,
            },
            Formula::Number(1.0),
        ),
        Formula::Negative(inner) => {
            let (share, core) = apart(inner);
            let over = -share.over;
            (Share { over, ..share }, core)
        }
        Formula::Quotient(over, under) => match **under {
            Formula::Number(number) if is_whole(number) && number > 0.0 => {
                let (share, core) = apart(over);
                let under = Share {
                    over: 1.0,
                    under: number,
                };
                (share.times(under), core)
            }
            _ => (Share::ONE, term.clone()),
        },
        Formula::Product(factors) => {
            let mut whole = Share::ONE;
            let mut cores = Vec::new();
            for factor in factors {
                // A sum in brackets stays as it is.
                let (share, core) = apart(factor);
                whole = whole.times(share);
                match core {
                    Formula::Number(1.0) => {}
                    Formula::Product(more) => cores.extend(more),
                    core => cores.push(core),
                }
            }
            let core = match cores.len() {
                0 => Formula::Number(1.0),
                1 => cores.remove(0),
                _ => Formula::Product(cores),
            };
            (whole, core)
        }
        other => (Share::ONE, other.clone()),
    }
}

/// A fraction of something, written as a person would: `3·L/4·sin θ`.
fn together(share: Share, core: Expression) -> Expression {
    let first = |first: Expression| {
        let counted = match share.over {
            1.0 => first,
            over => Formula::Number(over).times(first),
        };
        match share.under {
            1.0 => counted,
            under => counted.over(Formula::Number(under)),
        }
    };
    match core {
        Formula::Product(mut factors) => {
            let rest = factors.split_off(1);
            let head = factors.pop().map_or(Formula::Number(1.0), first);
            rest.into_iter().fold(head, Formula::times)
        }
        other => first(other),
    }
}

/// Signed terms with those gathered that are multiples of the same.
pub(super) fn gathered(terms: Vec<Signed>) -> Vec<Signed> {
    // How many of something, and the first term as it was written.
    let mut kept: Vec<(Share, Expression, usize, Expression)> = Vec::new();
    for (sign, amount) in terms {
        let (mut share, core) = apart(&amount);
        share.over *= sign;
        match kept.iter_mut().find(|(_, known, _, _)| *known == core) {
            Some((sum, _, count, _)) => {
                *sum = sum.plus(share);
                *count += 1;
            }
            None => kept.push((share, core, 1, amount)),
        }
    }
    kept.into_iter()
        .filter(|(share, _, _, _)| share.over != 0.0)
        .map(|(share, core, count, written)| {
            let sign = share.over.signum();
            if count == 1 {
                // Its own sign stands within it.
                let own = apart(&written).0.over.signum();
                return (sign * own, written);
            }
            let size = Share {
                over: share.over.abs(),
                ..share
            };
            (sign, together(size, core))
        })
        .collect()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::problem::GivenId;

    fn length() -> Expression {
        Formula::given(GivenId(0))
    }

    fn sine() -> Expression {
        Formula::Sine(Box::new(Formula::given(GivenId(1))))
    }

    #[test]
    fn equal_terms_become_one() {
        let term = length().times(sine());
        let twice = Formula::Number(2.0).times(length()).times(sine());
        assert_eq!(
            gathered(vec![(1.0, term.clone()), (1.0, term.clone())]),
            [(1.0, twice)]
        );
        assert_eq!(gathered(vec![(1.0, term.clone()), (-1.0, term)]), []);
    }

    #[test]
    fn halves_and_quarters_are_counted() {
        let half = length().over(Formula::Number(2.0)).times(sine());
        let whole = length().times(sine());
        assert_eq!(
            gathered(vec![(1.0, half.clone()), (1.0, half.clone())]),
            [(1.0, whole.clone())]
        );
        assert_eq!(
            gathered(vec![(1.0, half.clone()), (-1.0, whole.clone())]),
            [(-1.0, half.clone())]
        );
        let quarters = Formula::Number(3.0)
            .times(length())
            .over(Formula::Number(4.0));
        assert_eq!(
            gathered(vec![
                (1.0, length()),
                (-1.0, length().over(Formula::Number(4.0)))
            ]),
            [(1.0, quarters)]
        );
    }

    #[test]
    fn what_differs_stays_as_it_was() {
        let terms = vec![
            (1.0, length()),
            (-1.0, sine()),
            (1.0, length().times(sine())),
        ];
        assert_eq!(gathered(terms.clone()), terms);
        let opposite = Formula::Negative(Box::new(length()));
        assert_eq!(gathered(vec![(1.0, opposite.clone())]), [(1.0, opposite)]);
    }
}
