mod support;
use support::step_error::*;
use firstfill::engine::plan::Plan;
use firstfill::engine::simulation::*;
use firstfill::engine::valve::Valves;
use firstfill::engine::input::ModelInput;
use firstfill::engine::event::Event;
use firstfill::engine::result::{Reading,Side};
use firstfill::base::clock::DAY;
#[derive(Default)] struct All(Vec<Reading>);
impl Watcher for All { fn wants(&self,_:u32,_:Side)->bool{true} fn see(&mut self,r:&Reading,_:&Simulation<'_>){self.0.push(r.clone())} fn happened(&mut self,_:&Event,_:f64,_:&Reading,_:&Reading){} }
fn of(input:&ModelInput, finer:u32)->All{ let mut plan=Plan::new(input); plan.shortening.finer=finer; let mut tank=Simulation::filled(&plan); let mut v=Valves::new(&plan); let mut a=All::default(); while tank.minute<input.end_minute(){let d=tank.minute/DAY; tank.keeping.gas=v.set_for(d,&tank).unwrap(); tank.advance((d+1)*DAY,&mut a).unwrap();} a}
#[test] fn p(){ for (n,c) in shipped(){ if !["sixty"].contains(&n.as_str()){continue}
 let i=as_tuned(&c.input); let (a,b)=(of(&i,1),of(&i,16));
 for (x,y) in a.0.iter().zip(&b.0).filter(|(x,_)| x.minute>=3*1440+7*60 && x.minute<=3*1440+16*60) { println!("{} {:?} {:.5} {:.5} {:.5} set {:?}", x.minute%1440, x.side, x.temperature_c, y.temperature_c, x.temperature_c-y.temperature_c, i.heating.set_c); } } }
