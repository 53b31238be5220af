/**
 * Where the program starts. The only module that wires the others: film goes in on the command line, a folder of results
 * a film comes out.
 */
package floorgauge.app;
