/**
 * An invented gym: its room, floor, paint, light and fittings. Court frame, metres; colours are linear light, where 1 is a
 * perfectly white surface under the full light of the floor's middle.
 */
package floorgauge.sampleclips.render.gym;
