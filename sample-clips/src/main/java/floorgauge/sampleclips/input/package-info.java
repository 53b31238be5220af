/** Text files written by people, read so that every error can name the file, the line, the field and what was expected. */
package floorgauge.sampleclips.input;
