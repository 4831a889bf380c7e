//! Exponents of length, mass, time and angle.

/// The physical dimension of a quantity, as exponents of the base quantities.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub struct Dimension {
    /// Exponent of length.
    pub length: i8,
    /// Exponent of mass.
    pub mass: i8,
    /// Exponent of time.
    pub time: i8,
    /// Exponent of plane angle (the SI has none; here it keeps degrees and radians apart).
    pub angle: i8,
}

impl Dimension {
    /// A pure number.
    pub const NUMBER: Dimension = Dimension::of(0, 0, 0, 0);
    /// A length, in metres.
    pub const LENGTH: Dimension = Dimension::of(1, 0, 0, 0);
    /// A mass, in kilograms.
    pub const MASS: Dimension = Dimension::of(0, 1, 0, 0);
    /// A plane angle, in radians inside the program.
    pub const ANGLE: Dimension = Dimension::of(0, 0, 0, 1);
    /// A force, in newtons.
    pub const FORCE: Dimension = Dimension::of(1, 1, -2, 0);
    /// The square of a force, in newtons squared.
    pub const FORCE_SQUARED: Dimension = Dimension::of(2, 2, -4, 0);
    /// A moment of force, in newton metres.
    pub const MOMENT: Dimension = Dimension::of(2, 1, -2, 0);
    /// A force spread along a length, in newtons a metre.
    pub const FORCE_A_LENGTH: Dimension = Dimension::of(0, 1, -2, 0);
    /// An area, in square metres.
    pub const AREA: Dimension = Dimension::of(2, 0, 0, 0);
    /// A volume or the first moment of an area, in cubic metres.
    pub const VOLUME: Dimension = Dimension::of(3, 0, 0, 0);
    /// A mass spread over an area, in kilograms a square metre.
    pub const MASS_PER_AREA: Dimension = Dimension::of(-2, 1, 0, 0);
    /// An acceleration, in metres per second squared (the dimension of g).
    pub const ACCELERATION: Dimension = Dimension::of(1, 0, -2, 0);

    /// The dimension with these exponents.
    pub const fn of(length: i8, mass: i8, time: i8, angle: i8) -> Dimension {
        Dimension {
            length,
            mass,
            time,
            angle,
        }
    }

    /// The dimension of a product; `None` when an exponent leaves the range of a small number.
    pub fn times(self, other: Dimension) -> Option<Dimension> {
        Some(Dimension {
            length: self.length.checked_add(other.length)?,
            mass: self.mass.checked_add(other.mass)?,
            time: self.time.checked_add(other.time)?,
            angle: self.angle.checked_add(other.angle)?,
        })
    }

    /// The dimension of a quotient; `None` as in [`Dimension::times`].
    pub fn per(self, other: Dimension) -> Option<Dimension> {
        self.times(other.power(-1)?)
    }

    /// The dimension of a whole power; `None` as in [`Dimension::times`].
    pub fn power(self, exponent: i8) -> Option<Dimension> {
        Some(Dimension {
            length: self.length.checked_mul(exponent)?,
            mass: self.mass.checked_mul(exponent)?,
            time: self.time.checked_mul(exponent)?,
            angle: self.angle.checked_mul(exponent)?,
        })
    }

    /// The dimension of a square root, where every exponent is even.
    pub fn root(self) -> Option<Dimension> {
        let half = |exponent: i8| (exponent % 2 == 0).then_some(exponent / 2);
        Some(Dimension {
            length: half(self.length)?,
            mass: half(self.mass)?,
            time: half(self.time)?,
            angle: half(self.angle)?,
        })
    }
}
