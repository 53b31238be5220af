// Runs TensorFlow.js graph models on the WebAssembly back end, as the reference for the converted networks.
//
// node reference.cjs NODE_MODULES JOBS.json
// JOBS.json: [{model, input, shape, type, outputs: {name: file}}]; input and outputs are raw little-endian arrays.

const fs = require('fs');
const path = require('path');

const [modules, jobsFile] = process.argv.slice(2);
const tf = require(path.join(modules, '@tensorflow/tfjs'));
const wasm = require(path.join(modules, '@tensorflow/tfjs-backend-wasm'));
wasm.setWasmPaths(path.join(modules, '@tensorflow/tfjs-backend-wasm/dist/'));

function readModel(file) {
  const description = JSON.parse(fs.readFileSync(file));
  const weights = Buffer.concat(
      description.weightsManifest.flatMap(group => group.paths).map(name => fs.readFileSync(path.join(path.dirname(file), name))));
  return tf.loadGraphModel(tf.io.fromMemory({
    modelTopology: description.modelTopology,
    weightSpecs: description.weightsManifest.flatMap(group => group.weights),
    weightData: weights.buffer.slice(weights.byteOffset, weights.byteOffset + weights.byteLength),
    format: description.format,
    signature: description.signature,
  }));
}

async function run(job) {
  const model = await readModel(job.model);
  const bytes = fs.readFileSync(job.input);
  const input = job.type === 'int32' ? tf.tensor(Int32Array.from(bytes), job.shape, 'int32')
                                     : tf.tensor(Float32Array.from(bytes), job.shape, 'float32');
  const names = Object.keys(job.outputs);
  const results = [].concat(model.execute(input, names));
  for (let i = 0; i < names.length; i++) {
    fs.writeFileSync(job.outputs[names[i]], Buffer.from((await results[i].data()).buffer));
  }
}

(async () => {
  await tf.setBackend('wasm');
  await tf.ready();
  for (const job of JSON.parse(fs.readFileSync(jobsFile))) {
    await run(job);
  }
})();
