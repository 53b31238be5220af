/** Values that every part of the renderer speaks in: vectors, colours, seeded chance. */
package floorgauge.sampleclips.render.value;
