/** How long the stages of the work take; what comes out is for reading alone and never enters a result. */
package floorgauge.vision.timing;
