package floorgauge.vision.network;

import ai.djl.MalformedModelException;
import ai.djl.Model;
import ai.djl.inference.Predictor;
import ai.djl.ndarray.NDArray;
import ai.djl.ndarray.NDList;
import ai.djl.ndarray.NDManager;
import ai.djl.ndarray.types.DataType;
import ai.djl.ndarray.types.Shape;
import ai.djl.translate.NoBatchifyTranslator;
import ai.djl.translate.TranslateException;
import ai.djl.translate.TranslatorContext;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;

/** One loaded network: a batch of pictures in, its output's numbers out, row by row. Not thread-safe. */
final class Network implements AutoCloseable {

    private final Model model;
    private final Predictor<PictureBatch, float[]> predictor;

    /**
     * @param folder with the network files
     * @param name of the file, without its ending
     * @param precision the network's second input, a flag for the precision; empty where it has none
     * @throws NetworkException if the file is missing or cannot be loaded
     */
    Network(ModelFolder folder, String name, Optional<Precision> precision) {
        Path file = folder.path().resolve(name + ".pt");
        if (!Files.isReadable(file)) {
            throw new NetworkException(
                    file + ": no such network file; take the models folder of this version, or name it with -D"
                            + ModelFolder.PROPERTY);
        }
        Engine.prepare();
        model = Model.newInstance(name, "PyTorch");
        try {
            model.load(folder.path(), name);
        } catch (IOException | MalformedModelException | RuntimeException e) {
            model.close();
            throw new NetworkException(file + ": the network file cannot be loaded; copy it again", e);
        }
        predictor = model.newPredictor(new WholeBatch(precision));
    }

    /** Runs the network. */
    float[] run(PictureBatch batch) {
        return ExitGate.during(() -> predict(batch));
    }

    private float[] predict(PictureBatch batch) {
        try {
            return predictor.predict(batch);
        } catch (TranslateException e) {
            throw new IllegalStateException(
                    "network " + model.getName() + " failed on " + batch.count() + " x " + batch.height() + " x "
                            + batch.width(),
                    e);
        }
    }

    @Override
    public void close() {
        predictor.close();
        model.close();
    }

    /** Hands the batch over as it lies; the arrays live in the predictor's scope, which ends with the call. */
    private static final class WholeBatch implements NoBatchifyTranslator<PictureBatch, float[]> {

        private static final int CHANNELS = 3;

        private final Optional<Precision> precision;

        WholeBatch(Optional<Precision> precision) {
            this.precision = precision;
        }

        @Override
        public NDList processInput(TranslatorContext context, PictureBatch batch) {
            Shape shape = new Shape(batch.count(), batch.height(), batch.width(), CHANNELS);
            NDArray pictures = context.getNDManager().create(batch.bytes(), shape, DataType.UINT8);
            NDList input = new NDList(pictures);
            precision.ifPresent(p -> input.add(flag(context.getNDManager(), p)));
            return input;
        }

        private static NDArray flag(NDManager manager, Precision precision) {
            byte value = (byte) (precision == Precision.BFLOAT16 ? 1 : 0);
            return manager.create(ByteBuffer.wrap(new byte[] {value}), new Shape(1), DataType.UINT8);
        }

        @Override
        public float[] processOutput(TranslatorContext context, NDList output) {
            return output.singletonOrThrow().toFloatArray();
        }
    }
}
