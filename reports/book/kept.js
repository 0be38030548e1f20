// What stays on this device: the questions asked last, jobs and what was written on their cards. It is sent nowhere.

const NAME = "shop book";
const MOST = 30;

function empty() {
  return { units: "", questions: [], jobs: [] };
}

function read() {
  try {
    return { ...empty(), ...JSON.parse(localStorage.getItem(NAME) ?? "{}") };
  } catch {
    return empty();
  }
}

let all = read();

/** False where the device keeps nothing more. */
function write() {
  try {
    localStorage.setItem(NAME, JSON.stringify(all));
    return true;
  } catch {
    return false;
  }
}

export const units = () => all.units;
export function setUnits(value) { all.units = value; write(); }

export const questions = () => all.questions;
export function remember(text) {
  all.questions = [text, ...all.questions.filter(q => q !== text)].slice(0, MOST);
  write();
}

export const jobs = () => all.jobs;
export const job = name => all.jobs.find(j => j.name === name);
export function keepJob(name, text) {
  const before = job(name);
  const filled = before?.text === text ? before.filled : {};
  all.jobs = [{ name, text, filled }, ...all.jobs.filter(j => j.name !== name)];
  return write();
}
export function dropJob(name) { all.jobs = all.jobs.filter(j => j.name !== name); write(); }
export function fill(name, filled) {
  const found = job(name);
  if (found) found.filled = filled;
  return write();
}

/** Everything that is kept, as a file. */
export const exported = () => JSON.stringify(all, null, 1);
export function forget() { all = { ...empty(), units: all.units }; write(); }
export const isEmpty = () => !all.questions.length && !all.jobs.length;
/** Puts back what ``exported`` gave; false where it is no such file. */
export function restore(text) {
  let found;
  try { found = JSON.parse(text); } catch { return false; }
  const isText = value => typeof value === "string";
  const isJob = j => isText(j?.name) && isText(j?.text) && typeof j.filled === "object" && j.filled !== null;
  if (!Array.isArray(found?.questions) || !found.questions.every(isText)) return false;
  if (!Array.isArray(found.jobs) || !found.jobs.every(isJob)) return false;
  all.questions = [...new Set([...found.questions, ...all.questions])].slice(0, MOST);
  all.jobs = [...found.jobs, ...all.jobs.filter(j => !found.jobs.some(f => f.name === j.name))];
  return write();
}
