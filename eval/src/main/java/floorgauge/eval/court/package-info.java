/**
 * Scores of a calibration against a known one, and of measured floor positions against true ones. Metres, court frame. How
 * well the covered part is measured and how much of the court is covered are two figures, never one.
 */
package floorgauge.eval.court;
