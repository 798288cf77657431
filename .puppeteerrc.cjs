// The browser comes from npm (@sparticuz/chromium) or from BROWSER in the environment: nothing is downloaded at install.
module.exports = { skipDownload: true };
