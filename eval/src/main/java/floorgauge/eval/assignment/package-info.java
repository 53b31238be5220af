/**
 * Optimal one-to-one assignment: a matrix of values or costs goes in, for each row its column comes out. Tracking scores,
 * identity scores and event matching all rest on it.
 *
 * <p>Valid input is a row-major matrix of finite numbers; it may be empty, and need not be square. Where the matrix is not
 * square some rows or columns stay alone.
 */
package floorgauge.eval.assignment;
