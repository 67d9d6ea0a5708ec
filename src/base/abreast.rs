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

#[cfg(not(debug_assertions))]
struct Wide<W>(W);

#[cfg(not(debug_assertions))]
impl<W: Work> pulp::NullaryFnOnce for Wide<W> {
    type Output = W::Output;
    #[inline(always)]
    fn call(self) -> W::Output {
        self.0.go()
    }
}

/// Does some work with the widest instructions at hand.
#[cfg(not(debug_assertions))]
pub fn wide<W: Work>(work: W) -> W::Output {
    pulp::Arch::new().dispatch(Wide(work))
}

/// Does some work. Built for tests there are no wide instructions: hardly anything would be made of them there, and the
/// steps would be built once for every kind of processor, which takes eight times as long.
#[cfg(debug_assertions)]
pub fn wide<W: Work>(work: W) -> W::Output {
    work.go()
}
