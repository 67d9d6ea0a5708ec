//! Work for which the processor's widest instructions are used, if it has them.
//!
//! The program is built for any processor of its family and looks at run time which it is on (crate
//! `pulp`, so that this project holds no unsafe code). What is done is the same: additions and
//! multiplications, each rounded by itself. Rust never fuses them, so the bits are the same too.

/// Something to do with wide instructions. All that it calls must be inlined, or it is built
/// without them.
pub trait Work {
    /// What comes of it.
    type Output;
    /// Does it.
    fn go(self) -> Self::Output;
}

struct Wide<W>(W);

impl<W: Work> pulp::NullaryFnOnce for Wide<W> {
    type Output = W::Output;
    #[inline(always)]
    fn call(self) -> W::Output {
        self.0.go()
    }
}

/// Does some work with the widest instructions at hand.
pub fn wide<W: Work>(work: W) -> W::Output {
    pulp::Arch::new().dispatch(Wide(work))
}
