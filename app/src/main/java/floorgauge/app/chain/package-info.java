/** The chain from a film to its results: court, tracks, findings, pictures of the decisive frames, files. */
package floorgauge.app.chain;
