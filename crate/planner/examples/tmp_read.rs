fn main(){ let l=planner::starters::harbour_supper();
 if std::env::args().nth(1).as_deref()==Some("canon"){ print!("{}\n", l.to_json()); return; }
 let s=planner::readings::Study::new(&l); let t=std::time::Instant::now(); let r=planner::readings::report(&s,true); eprintln!("{:?} {:?}",t.elapsed(), r.scores);
 for f in r.findings { println!("{} r{} {:.1} {} | {:?}", f.key,f.rank,f.figure,f.sentence,f.remedy.map(|r|(r.act,r.predicted))); } }
