package floorgauge.vision.network;

import floorgauge.court.calibration.OpenCv;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import org.opencv.core.Mat;

/**
 * Reads the number on torsos that were cut upright from the picture. Trained on drawn numbers alone (its card in models/).
 *
 * <p>Not thread-safe; owns native memory until closed.
 */
public final class NumberReader implements AutoCloseable {

    /** Side of a crop, pixels. */
    public static final int SIDE = 64;

    private static final String NETWORK = "number-reader";

    private static final int MOST_AT_ONCE = 16;

    private final Network network;
    private final PictureBatch batch = new PictureBatch();

    /**
     * Loads the network.
     *
     * @throws NetworkException if its file is missing or damaged
     */
    public NumberReader(ModelFolder models) {
        OpenCv.load();
        network = new Network(models, NETWORK, Optional.empty());
    }

    /**
     * Reads crops.
     *
     * @param cuts each fills a matrix of {@link #SIDE} x {@link #SIDE}, 8-bit BGR, with its crop
     * @return one belief for each crop
     */
    public List<NumberBelief> read(List<? extends Consumer<Mat>> cuts) {
        List<NumberBelief> beliefs = new ArrayList<>(cuts.size());
        for (int start = 0; start < cuts.size(); start += MOST_AT_ONCE) {
            beliefs.addAll(run(cuts.subList(start, Math.min(cuts.size(), start + MOST_AT_ONCE))));
        }
        return beliefs;
    }

    private List<NumberBelief> run(List<? extends Consumer<Mat>> cuts) {
        batch.shape(cuts.size(), SIDE, SIDE);
        for (int i = 0; i < cuts.size(); i++) {
            Mat input = batch.picture(i);
            cuts.get(i).accept(input);
            input.release();
        }
        float[] rows = network.run(batch);
        int columns = NumberBelief.NUMBERS + 1;
        List<NumberBelief> beliefs = new ArrayList<>(cuts.size());
        for (int i = 0; i < cuts.size(); i++) {
            beliefs.add(new NumberBelief(Arrays.copyOfRange(rows, i * columns, (i + 1) * columns)));
        }
        return beliefs;
    }

    /** Frees the network. */
    @Override
    public void close() {
        network.close();
    }
}
