//! Start + in − out = now, per conserved quantity.

use crate::model::conserved::{FLUXES, Flux, QUANTITIES, Quantity};

/// The account of one conserved quantity.
#[derive(Debug, Clone)]
pub struct Account {
    /// Which quantity.
    pub quantity: Quantity,
    /// In the tank at filling.
    pub start: f64,
    /// Into the tank (positive) or out, per way across the boundary.
    pub crossed: [f64; FLUXES.len()],
    /// In the tank at the end.
    pub now: f64,
}

impl Account {
    /// What the account misses: now − start − Σ crossed.
    pub fn error(&self) -> f64 {
        self.now - self.start - self.crossed.iter().sum::<f64>()
    }
    /// The error as a share of all that moved and was there.
    pub fn relative_error(&self) -> f64 {
        let size =
            self.start.abs() + self.now.abs() + self.crossed.iter().map(|x| x.abs()).sum::<f64>();
        if size == 0.0 {
            0.0
        } else {
            self.error().abs() / size
        }
    }
    /// What came in (positive) or left by one way.
    pub fn by(&self, flux: Flux) -> f64 {
        self.crossed[flux.index()]
    }
}

/// One account per conserved quantity.
#[derive(Debug, Clone)]
pub struct Ledger {
    /// The accounts, in the order of [`QUANTITIES`].
    pub accounts: Vec<Account>,
}

/// Largest relative error that is still rounding: 20,000 steps of sums of some hundred terms,
/// each off by 1e-16, walk to about 1e-12; a wrong coefficient shows at 1e-6 and above.
pub const ROUNDING: f64 = 1e-10;

impl Ledger {
    /// The account of a quantity.
    pub fn of(&self, quantity: Quantity) -> &Account {
        let at = QUANTITIES
            .iter()
            .position(|&q| q == quantity)
            .expect("every quantity is listed");
        &self.accounts[at]
    }
    /// The account that does not close to rounding, if any.
    pub fn broken(&self) -> Option<&Account> {
        self.accounts
            .iter()
            .find(|a| a.relative_error().is_nan() || a.relative_error() > ROUNDING)
    }
    /// The largest relative error of all accounts.
    pub fn worst(&self) -> f64 {
        self.accounts
            .iter()
            .map(Account::relative_error)
            .fold(0.0, f64::max)
    }
}
