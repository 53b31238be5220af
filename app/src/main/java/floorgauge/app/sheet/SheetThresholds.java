package floorgauge.app.sheet;

/**
 * The standards that are drawn into the spacing chart.
 *
 * @param crowdedMetres the least distance between team-mates that is asked for
 * @param collapsedSquareMetres the least area that five attackers are asked to span
 */
public record SheetThresholds(double crowdedMetres, double collapsedSquareMetres) {}
