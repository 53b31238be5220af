package floorgauge.app.drawing;

/** The trade's own marks: an attacker's number in a circle, a defender's cross with its number. */
final class PlayerMark {

    private static final double RADIUS = 8;
    private static final double CROSS = 4.5;
    private static final double TEXT_DROP = 3.6;

    private PlayerMark() {}

    static void draw(Svg svg, double x, double y, String number, boolean attacking) {
        if (attacking) {
            svg.circle(x, y, RADIUS, "attacker-mark");
            svg.text(x, y + TEXT_DROP, "middle", "player-number", number);
        } else {
            svg.line(x - CROSS, y - CROSS, x + CROSS, y + CROSS, "defender-mark");
            svg.line(x - CROSS, y + CROSS, x + CROSS, y - CROSS, "defender-mark");
            svg.text(x + CROSS + 1.5, y + CROSS + 5, "start", "player-number haloed", number);
        }
    }
}
