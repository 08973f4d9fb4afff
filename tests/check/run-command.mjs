import { spawn } from 'node:child_process';
import { projectFolder } from './project-files.mjs';

/**
 * Runs a tool from node_modules in the project folder; what it says is kept for the case that it fails.
 * @param {string} tool path of its script below node_modules
 * @param {readonly string[]} args
 * @returns {Promise<import('./run.mjs').Outcome>}
 */
export function runCommand(tool, args) {
  return new Promise((resolve, reject) => {
    const child = spawn(process.execPath, [`node_modules/${tool}`, ...args], {
      cwd: projectFolder,
      stdio: ['ignore', 'pipe', 'pipe'],
    });
    /** @type {Buffer[]} */
    const said = [];
    child.stdout.on('data', (chunk) => said.push(chunk));
    child.stderr.on('data', (chunk) => said.push(chunk));
    child.once('error', reject);
    child.once('close', (code) => {
      const text = Buffer.concat(said).toString().trimEnd();
      resolve(code === 0 ? { status: 'passed', text: '' } : { status: 'failed', text });
    });
  });
}
