package floorgauge.eval;
