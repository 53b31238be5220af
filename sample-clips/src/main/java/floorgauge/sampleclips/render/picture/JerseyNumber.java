package floorgauge.sampleclips.render.picture;

/** Block digits on a jersey, five cells wide and seven high, 0.20 m tall on the back (FIBA rules, article 4, from memory). */
final class JerseyNumber {

    private static final String[] DIGITS = {
        "01110 11011 11011 11011 11011 11011 01110",
        "00110 01110 00110 00110 00110 00110 01111",
        "01110 11011 00011 00110 01100 11000 11111",
        "11110 00011 00011 01110 00011 00011 11110",
        "11011 11011 11011 11111 00011 00011 00011",
        "11111 11000 11110 00011 00011 11011 01110",
        "01110 11000 11110 11011 11011 11011 01110",
        "11111 00011 00110 00110 01100 01100 01100",
        "01110 11011 11011 01110 11011 11011 01110",
        "01110 11011 11011 01111 00011 00011 01110"
    };
    private static final double CELL_METRES = 0.028;
    private static final double FRONT_SCALE = 0.72;

    private final boolean[][] cells;
    final float[] colour;

    /** @param number 0 to 99 */
    JerseyNumber(int number, float[] colour) {
        this.colour = colour;
        String text = Integer.toString(number);
        int width = 6 * text.length() - 1;
        cells = new boolean[7][width];
        for (int d = 0; d < text.length(); d++) {
            String[] rows = DIGITS[text.charAt(d) - '0'].split(" ");
            for (int r = 0; r < 7; r++) {
                for (int c = 0; c < 5; c++) {
                    cells[r][6 * d + c] = rows[r].charAt(c) == '1';
                }
            }
        }
    }

    /**
     * Whether a point carries paint.
     *
     * @param right metres to the reader's right of the number's middle
     * @param up metres above it
     * @param mark 1 on the chest, 2 on the back
     */
    boolean covers(double right, double up, int mark) {
        double cell = mark == 1 ? CELL_METRES * FRONT_SCALE : CELL_METRES;
        int c = (int) Math.floor(right / cell + cells[0].length / 2.0);
        int r = (int) Math.floor(3.5 - up / cell);
        return r >= 0 && r < 7 && c >= 0 && c < cells[0].length && cells[r][c];
    }
}
