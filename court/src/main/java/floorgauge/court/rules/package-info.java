/**
 * Courts as the rule books describe them: sizes, painted lines as geometry with their widths, named points. Plain Java;
 * court frame, metres.
 */
package floorgauge.court.rules;
