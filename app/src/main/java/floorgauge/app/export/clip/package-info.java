/**
 * Clips of film with what was measured burnt in: skeletons, bodies' envelopes, distances on the floor, one sentence and a time rule
 * on a strip of paper below the picture. A finding, its film and its tracks flow in, H.264 flows out.
 */
package floorgauge.app.export.clip;
