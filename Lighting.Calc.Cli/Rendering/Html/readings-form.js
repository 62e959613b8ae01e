'use strict';
const fields = Array.from(document.querySelectorAll('[data-point]'));
let saved = true;
const quoted = text => /[",;\n]/.test(text) ? '"' + text.replace(/"/g, '""') + '"' : text;
function reading(field) {
  const tick = document.getElementById(field.id + 'e');
  let said = field.value.trim();
  if (said === '') return tick !== null ? (tick.checked ? field.dataset.expected : '') : '';
  if (/^-?\d+,\d+$/.test(said)) said = said.replace(',', '.');
  return said;
}
function row(field) {
  const said = reading(field), look = /^(lit|dim|off|dark|good|bright)$/i.test(said);
  const instrument = field.dataset.instrument === 'meter' ? (look ? 'test lamp' : 'meter') : field.dataset.instrument;
  return [field.dataset.when, field.dataset.point, instrument, said, '', field.dataset.jumper || ''].map(quoted).join(',');
}
function list() {
  const rows = fields.filter(field => reading(field) !== '').map(row);
  return ['when,point,instrument,reading,to,jumper'].concat(rows).join('\n') + '\n';
}
function count() {
  const taken = fields.filter(field => reading(field) !== '').length;
  document.getElementById('taken').textContent = taken + ' of ' + fields.length + ' filled in';
}
document.addEventListener('input', () => { saved = false; count(); });
document.getElementById('save').addEventListener('click', () => {
  const link = document.createElement('a');
  link.href = 'data:text/csv;charset=utf-8,' + encodeURIComponent(list());
  link.download = 'readings.csv';
  document.body.append(link);
  link.click();
  link.remove();
  saved = true;
});
window.addEventListener('beforeunload', leaving => { if (!saved) leaving.preventDefault(); });
count();
