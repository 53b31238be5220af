package floorgauge.vision.network;

/**
 * Settings of PyTorch that hold for the whole process and must be set before it is loaded. What is already set on the
 * command line stands.
 */
final class Engine {

    static final String THREADS = "ai.djl.pytorch.num_threads";

    static {
        // DJL would otherwise ask addresses on the net for models and send figures about its use.
        setDefault("ai.djl.offline", "true");
        setDefault("OPT_OUT_TRACKING", "true");
        // Sums that one thread makes come out the same however many cores work on a film, and networks side by side use
        // the
        // cores better than threads that wait for each other at every layer.
        setDefault(THREADS, "1");
        // The optimizer recompiles for each new size of input, which takes seconds, and gains nothing afterwards.
        setDefault("ai.djl.pytorch.graph_optimizer", "false");
        // No network runs parts of its own side by side.
        setDefault("ai.djl.pytorch.num_interop_threads", "1");
    }

    private Engine() {}

    /** Makes sure that the settings stand. */
    static void prepare() {
        // The static initialiser has done it.
    }

    private static void setDefault(String property, String value) {
        if (System.getProperty(property) == null) {
            System.setProperty(property, value);
        }
    }
}
