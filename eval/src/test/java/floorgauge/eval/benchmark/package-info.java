/** Benchmarks of the stages that take the time; docs/speed.md has the command and the figures. */
package floorgauge.eval.benchmark;
