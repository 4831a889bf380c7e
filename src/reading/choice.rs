//! Where a line can be read in more than one way, and which way is taken.

/// How far the argument of a function without brackets goes.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub(super) enum Extent {
    /// `sin 35*2` is (sin 35)·2.
    #[default]
    Narrow,
    /// `sin 35*2` is sin(35·2).
    Term,
    /// `cos 90-35` is cos(90 − 35).
    Sum,
}

/// One choice for everything in a line that can be read in several ways. The default is the most
/// plausible one.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub(super) struct Choice {
    /// `1,500` is one and a half.
    pub(super) decimal: bool,
    /// `171/2 sin 35` is 171/(2·sin 35).
    pub(super) tight: bool,
    pub(super) extent: Extent,
    /// `sin 35^2` is sin(35²).
    pub(super) inner_power: bool,
    /// `−120^2` is (−120)².
    pub(super) signed_power: bool,
    /// `3 m` is three times the mass m.
    pub(super) unit_as_name: bool,
    /// In `196 N + 0.35 N` these places, counted from the last bit, are that multiple of the force
    /// N, and the others newtons.
    pub(super) newtons_as_name: u8,
    /// `12 g` is twelve grams.
    pub(super) name_as_unit: bool,
    /// `9·8` is nine and eight tenths.
    pub(super) raised_point: bool,
}

/// The most places of which each may be newtons or a force N.
pub(super) const MOST_NEWTONS: u8 = 3;

/// Which choices a line offered.
#[derive(Clone, Copy, Debug, Default)]
pub(super) struct Offered {
    pub(super) either_comma: bool,
    pub(super) decimal_comma: bool,
    pub(super) tight: bool,
    pub(super) term: bool,
    pub(super) sum: bool,
    pub(super) power: bool,
    pub(super) signed_power: bool,
    pub(super) unit_as_name: bool,
    /// How many places may be newtons or a force N.
    pub(super) newtons: u8,
    pub(super) name_as_unit: bool,
    pub(super) raised_point: bool,
}

impl Offered {
    /// The choices of both.
    pub(super) fn and(self, other: Offered) -> Offered {
        Offered {
            either_comma: self.either_comma || other.either_comma,
            decimal_comma: self.decimal_comma || other.decimal_comma,
            tight: self.tight || other.tight,
            term: self.term || other.term,
            sum: self.sum || other.sum,
            power: self.power || other.power,
            signed_power: self.signed_power || other.signed_power,
            unit_as_name: self.unit_as_name || other.unit_as_name,
            newtons: self.newtons.max(other.newtons),
            name_as_unit: self.name_as_unit || other.name_as_unit,
            raised_point: self.raised_point || other.raised_point,
        }
    }

    /// Every combination of the choices offered, those with fewest departures from `first` first.
    pub(super) fn combinations(self, first: Choice) -> Vec<Choice> {
        let mut all = vec![(0_u32, first)];
        let mut add = |offered: bool, change: &dyn Fn(&mut Choice)| {
            if offered {
                let changed = all.iter().map(|(departures, choice)| {
                    let mut choice = *choice;
                    change(&mut choice);
                    (departures + 1, choice)
                });
                let changed: Vec<_> = changed.collect();
                all.extend(changed);
            }
        };
        add(self.name_as_unit, &|choice| choice.name_as_unit = true);
        add(self.either_comma, &|choice| {
            choice.decimal = !choice.decimal
        });
        add(self.raised_point, &|choice| choice.raised_point = true);
        add(self.tight, &|choice| choice.tight = true);
        add(self.power, &|choice| choice.inner_power = true);
        add(self.signed_power, &|choice| choice.signed_power = true);
        add(self.unit_as_name, &|choice| choice.unit_as_name = true);
        let several = (2..=MOST_NEWTONS).contains(&self.newtons);
        let some = 1..(1_u8 << self.newtons.min(MOST_NEWTONS)) - 1;
        let mixed: Vec<Choice> = some
            .filter(|_| several)
            .map(|places| Choice {
                newtons_as_name: places,
                ..first
            })
            .collect();
        add(self.term, &|choice| choice.extent = Extent::Term);
        add(self.sum, &|choice| choice.extent = Extent::Sum);
        all.extend(mixed.into_iter().map(|choice| (1, choice)));
        all.sort_by_key(|(departures, _)| *departures);
        all.into_iter().map(|(_, choice)| choice).collect()
    }
}
