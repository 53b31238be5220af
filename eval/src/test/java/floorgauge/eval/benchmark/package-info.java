/**
 * JMH benchmarks of the hot paths of all modules, kept with the tests and so out of every shipped jar. {@code eval/benchmark}
 * runs them and prints one table with, beside each time, the least time that the machine could need for the operations and
 * bytes of the work ({@link floorgauge.eval.benchmark.Floor}).
 */
package floorgauge.eval.benchmark;
